"""The command `evensum`."""


def main() -> None:
    raise SystemExit(0)
