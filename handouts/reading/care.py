"""The care table: what conditions and circumstances ask of the training."""

from __future__ import annotations

from pathlib import Path

from handouts.models import CareTable
from handouts.reading.faults import shape
from handouts.reading.text_file import read_text
from handouts.reading.yaml_text import read_yaml

_TABLE = Path(__file__).resolve().parent.parent / "coaching" / "care.yaml"


def read_care_table(path: Path = _TABLE) -> CareTable:
    """The table that comes with the program, or another of the same form.

    Raises StudioFaults with every fault of the file.
    """
    return shape(CareTable, read_yaml(read_text(path, path.name), path.name), path.name)
