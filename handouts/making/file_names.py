"""Safe names for folders and files from whatever a trainer calls a client.

A client may be called "../../etc/passwd", "CON" or "a/b"; the real name stands
on the sheet, and the folder gets a name that every file system takes.
"""

from __future__ import annotations

import hashlib
import re
import unicodedata
from collections.abc import Iterable

# Names that Windows keeps for devices (Microsoft, "Naming Files, Paths, and
# Namespaces").
_DEVICES = frozenset(
    {"con", "prn", "aux", "nul", *(f"com{n}" for n in range(10)), *(f"lpt{n}" for n in range(10))}
)
_LONGEST = 48


def safe_name(name: str) -> str:
    """A file name of ASCII letters, digits and hyphens, 1 to 57 characters.

    A name that is already safe stays as it is; any other gets eight digits of
    its own fingerprint, so that two names never become one.
    """
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode()
    plain = re.sub(r"[^A-Za-z0-9]+", "-", plain).strip("-")[:_LONGEST].strip("-")
    if name and plain == name and name.lower() not in _DEVICES:
        return name
    return f"{plain or 'name'}-{_fingerprint(name)}"


def safe_names(names: Iterable[str]) -> dict[str, str]:
    """A safe name for each, all different even where letter case is lost."""
    chosen = {name: safe_name(name) for name in names}
    seen: dict[str, int] = {}
    for safe in chosen.values():
        seen[safe.lower()] = seen.get(safe.lower(), 0) + 1
    return {
        name: safe if seen[safe.lower()] == 1 else f"{safe}-{_fingerprint(name)}"
        for name, safe in chosen.items()
    }


def _fingerprint(name: str) -> str:
    return hashlib.sha256(name.encode("utf-8", "surrogatepass")).hexdigest()[:8]
