"""A studio's own settings of the wording checker, in `wording.yaml`.

    language: fr
    fails at: blocks
    known words:
      - red band
    turned off:
      reading-grade: Our readers teach movement themselves.

All keys may be left out.  The file lies in the studio's folder, beside
studio.yaml, or in any folder above the texts; the nearest one counts.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from handouts.errors import Fault, StudioFaults, quoted
from handouts.wording.marks import Strength
from handouts.wording.names import ALL_NAMES, LANGUAGES, STRENGTHS, instead_of

SETTINGS_FILE = "wording.yaml"
_KEYS = ("language", "fails at", "known words", "turned off")


@dataclass(frozen=True)
class Settings:
    """How one studio wants its texts checked.

    language: of texts that do not say theirs.
    fails_at: the strength from which a finding makes the exit status 1.
    known_words: names that the studio's readers know, such as "red band";
        marks within them are left out.
    turned_off: a kind or a check to the reason why it is left out.
    """

    language: str = "en"
    fails_at: Strength = "advice"
    known_words: tuple[str, ...] = ()
    turned_off: Mapping[str, str] = field(default_factory=dict)

    def known_pattern(self) -> re.Pattern[str] | None:
        """Finds the known words in any case, with any spaces between them."""
        if not self.known_words:
            return None
        phrases = sorted(self.known_words, key=len, reverse=True)
        words = "|".join(r"\s+".join(map(re.escape, phrase.split())) for phrase in phrases)
        return re.compile(rf"(?<!\w)(?:{words})(?!\w)", re.IGNORECASE)


def find_settings(folder: Path) -> Path | None:
    """The settings file that counts for texts in `folder`: in it or above it,
    but not above the studio."""
    for place in (folder, *folder.parents):
        if (place / SETTINGS_FILE).is_file():
            return place / SETTINGS_FILE
        if (place / "studio.yaml").is_file():
            return None
    return None


def read_settings(path: Path, shown: str) -> Settings:
    """shown: the file's path for messages.  Raises StudioFaults with every fault of the file."""
    from handouts.reading.text_file import read_text
    from handouts.reading.yaml_text import read_yaml

    text = read_text(path, shown)
    if not any(line.strip() and not line.lstrip().startswith("#") for line in text.splitlines()):
        return Settings()
    document = read_yaml(text, shown)
    faults: list[Fault] = []

    def fault(place: tuple[str | int, ...], wrong: str, instead: str, of_key: bool = False) -> None:
        faults.append(Fault(shown, document.line(place, of_key), wrong, instead))

    data: dict[str, Any] = document.data
    for key in data:
        if key not in _KEYS:
            fault((key,), f"there is no setting {quoted(key)}", "the settings are " + ", ".join(_KEYS), of_key=True)
    language = data.get("language", "en")
    if language not in LANGUAGES:
        fault(("language",), f"{quoted(language)} is not a language that is checked", f"write {' or '.join(LANGUAGES)}")
    fails_at = data.get("fails at", "advice")
    if fails_at not in STRENGTHS:
        fault(("fails at",), f"{quoted(fails_at)} is not a strength", f"write {' or '.join(STRENGTHS)}")
    known = data.get("known words", ())
    if isinstance(known, str) and known:
        fault(("known words",), "one word stands where a list belongs", "put '- ' before it, on a line of its own")
    for at, phrase in enumerate(known if isinstance(known, list) else ()):
        if not isinstance(phrase, str) or not phrase.strip():
            fault(("known words", at), "this is no name of a thing", "write its words, such as 'red band'")
    turned_off = data.get("turned off", {})
    if not isinstance(turned_off, dict):
        if turned_off:
            fault(("turned off",), "this is no list of names with reasons", "write 'reading-grade: your reason'")
        turned_off = {}
    for name, reason in turned_off.items():
        if name not in ALL_NAMES:
            fault(("turned off", name), f"there is no kind or check {quoted(name)}", instead_of(name), of_key=True)
        if not isinstance(reason, str) or not reason.strip():
            fault(
                ("turned off", name),
                f"{quoted(name)} is turned off without a reason",
                f"write why: '{quoted(name)[1:-1]}: your reason'",
                of_key=True,
            )
    if faults:
        raise StudioFaults(tuple(faults))
    return Settings(language, fails_at, tuple(known or ()), dict(turned_off))
