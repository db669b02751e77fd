from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

SAMPLES: list[dict[str, Any]] = list(
    yaml.load((Path(__file__).parent / "samples.yaml").read_text("utf-8"), Loader=yaml.BaseLoader)
)


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """A test that asks for `sample` runs for each figure of samples.yaml."""
    if "sample" in metafunc.fixturenames:
        names = [f"{figure['figure']}-{n}" for n, figure in enumerate(SAMPLES, 1)]
        metafunc.parametrize("sample", SAMPLES, ids=names)


@pytest.fixture(scope="session")
def samples() -> list[dict[str, Any]]:
    return SAMPLES
