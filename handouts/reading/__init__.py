"""Files to models: every fault has file, line, what is wrong, what to write."""

from handouts.reading.studio import StudioReading, find_studio, read_studio, read_studio_parts

__all__ = ["StudioReading", "find_studio", "read_studio", "read_studio_parts"]
