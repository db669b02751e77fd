"""Lines of maths, typeset: a worked solution, a formula."""

from __future__ import annotations

from collections.abc import Sequence

from bot.pictures.formulas import Formulas
from bot.pictures.typeset import Format, typeset_source


def lines(steps: Sequence[tuple[str, str]], into: Format = "png") -> bytes:
    """Lines under one another, as a picture: each is (maths, words beside it), both may be empty.

    Maths that can't be read is shown as it stands.
    """
    formulas = Formulas()
    rows = [{"write": formulas.bare(write), "because": formulas.text(because)} for write, because in steps]
    return typeset_source(
        formulas.source() + '#import "/maths.typ": page\n#page(formulas)\n', {"rows": rows}, into
    )
