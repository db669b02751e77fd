"""Tables for a spreadsheet: CSV after RFC 4180, and no cell that a spreadsheet takes for a formula."""

from __future__ import annotations

import csv
import io
from collections.abc import Sequence


def csv_text(lines: Sequence[Sequence[object]]) -> str:
    """Lines as CSV: commas, double quotes where needed, CR LF after every line."""
    text = io.StringIO()
    csv.writer(text, lineterminator="\r\n").writerows([[safe(cell) for cell in line] for line in lines])
    return text.getvalue()


def safe(cell: object) -> object:
    """A cell that no spreadsheet takes for a formula; plain numbers stay as they are."""
    if not isinstance(cell, str) or cell[:1] not in ("=", "+", "-", "@", "\t", "\r"):
        return cell
    return cell if cell.lstrip("+-").replace(".", "", 1).isdecimal() else f"'{cell}"
