"""Which exercise the client means: words held against titles.

A name is sure when it fits one exercise of the session and no other.  "Press"
is enough where only one press is on the sheet; "seated press" is not, where
the sheet has a floor press.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from handouts.fitting.fitted import FittedExercise, FittedSession
from handouts.logbook.tokens import Token, cut
from handouts.logbook.words import Words, singular, words
from handouts.models import Exercise


@dataclass(frozen=True)
class Names:
    """The names of all exercises, for one client.

    by_id: for each exercise the words of each of its names.
    """

    words: Words
    by_id: dict[str, tuple[frozenset[str], ...]]
    lexicon: frozenset[str]

    def run(self, tokens: list[Token], at: int) -> int:
        """Where the name that begins at `at` ends; `at` where none begins.

        A name is a run of words from titles, with small words between; number
        words at its ends and words that are too common belong to no name.
        """
        end = at
        for here in range(at, len(tokens)):
            token = tokens[here]
            if token.kind != "word":
                break
            word = singular(token.text)
            if word in self.lexicon:
                end = here + 1
            elif here == at or not self.words.has("joining", token.text):
                break
        while end > at and self.words.number(tokens[end - 1].text) is not None:
            end -= 1
        said = [token.text for token in tokens[at:end]]
        if not said or (self.words.number(said[0]) is not None and len(said) < 3):
            return at
        naming = [word for word in said if not self._common(word)]
        return end if naming or self.all_of(self.said(said)) else at

    def _common(self, word: str) -> bool:
        return self.words.has("too_common", word) or self.words.has("joining", word)

    def said(self, name: Iterable[str]) -> frozenset[str]:
        """The words of a name that count."""
        return frozenset(singular(word) for word in name if not self.words.has("joining", word))

    def of_text(self, text: str) -> frozenset[str]:
        return self.said(token.text for token in cut(text, self.words) if token.kind == "word")

    def all_of(self, said: frozenset[str]) -> tuple[str, ...]:
        """Exercises that have exactly this name."""
        return tuple(id for id, names in self.by_id.items() if said in names)

    def within(self, said: frozenset[str], ids: Iterable[str]) -> tuple[str, ...]:
        """Those of `ids` that have a name with all of these words in it."""
        return tuple(id for id in ids if said and any(said <= name for name in self.by_id.get(id, ())))

    def near(self, said: frozenset[str], ids: Iterable[str]) -> tuple[str, ...]:
        """Those of `ids` that share a word with this name."""
        return tuple(id for id in ids if any(said & name for name in self.by_id.get(id, ())))


def names_for(exercises: Mapping[tuple[str, str], Exercise], language: str) -> Names:
    """The names in the client's language and in English."""
    own = words(language)
    by_id: dict[str, set[frozenset[str]]] = {}
    spoken = own.table["spoken_names"]
    for (id, tag), exercise in exercises.items():
        if tag not in (language, "en"):
            continue
        titles = [exercise.facts.title, id.replace("-", " "), *spoken.get(id, ())]
        for title in titles:
            for name in {title, title.partition(",")[0]}:
                said = [token.text for token in cut(name, own) if token.kind == "word"]
                by_id.setdefault(id, set()).add(
                    frozenset(singular(word) for word in said if not own.has("joining", word))
                )
    frozen = {id: tuple(sorted(names - {frozenset()}, key=sorted)) for id, names in by_id.items()}
    lexicon = frozenset(word for names in frozen.values() for name in names for word in name)
    return Names(own, frozen, lexicon)


def session_exercises(session: FittedSession) -> tuple[FittedExercise, ...]:
    """The numbered exercises of a session, in the order of the sheet."""
    return tuple(exercise for group in session.groups for exercise in group.exercises)
