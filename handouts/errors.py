"""What can go wrong, in the words that the user reads.

A `Fault` is one mistake in one place of the user's files.  Faults are
collected, not raised one by one, so that a trainer sees all of them at once;
`StudioFaults` carries the collected list up to the command line.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, order=True)
class Fault:
    """One mistake of the user's, in one line of one file.

    path: the file as the user would name it, relative to the studio.
    line: counted from 1; 0 when the fault concerns the file as a whole.
    wrong: what is wrong, without a final stop.
    instead: what to write or do instead, without a final stop.
    """

    path: str
    line: int
    wrong: str
    instead: str

    def __str__(self) -> str:
        place = f"{self.path}:{self.line}" if self.line else self.path
        return f"{place}: {self.wrong}; {self.instead}"


class HandoutsError(Exception):
    """Base of all errors that are not a bug of this program."""


class StudioFaults(HandoutsError):
    """The user's files have faults; nothing was made from them."""

    def __init__(self, faults: tuple[Fault, ...]):
        self.faults = tuple(sorted(faults))
        super().__init__("\n".join(str(fault) for fault in self.faults))


class StudioNotFound(HandoutsError):
    """No studio folder at the place asked for, nor above it."""


class MissingLibrary(HandoutsError):
    """A system library that one form of output needs is not installed.

    The message says what is missing, for which form, and the install command.
    """


class RenderError(HandoutsError):
    """A form could not be made from a sound Handout; the message says why."""


class UnknownCharacter(RenderError):
    """A character has no braille in the table in use.

    characters: (character, its Unicode name, index in the text) for each.
    """

    def __init__(self, message: str, characters: tuple[tuple[str, str, int], ...] = ()):
        self.characters = characters
        super().__init__(message)


def quoted(text: str) -> str:
    """What the user wrote, in quotes, short and on one line, for a message."""
    words = " ".join("".join(sign if sign.isprintable() else " " for sign in text).split())
    return f"'{words if len(words) <= 60 else words[:57] + '...'}'"
