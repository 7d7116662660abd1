"""Says a French sentence in English, a word for each of its words.

All that was learnt was learnt from English, and most of it holds in French too:
who is told to look at what, and whether words say the place that is pointed
at.  So a French sentence is asked about as the row of English words that stand
for its own, such as "tenez la barre comme ça" as "hold the bar like this".
That is no English that anybody would write, but word by word it lies on the
same places, so that what is found of a word is found of the author's word.

`lexicons/fr_in_english.txt` has the words, a line each: an English word and
the French ones that it stands for, or, with a "=" between, some English words
and as many French ones that mean something else together than one by one:
"until the moment that = jusqu à ce que".
"""

from collections.abc import Callable
from functools import cache
from pathlib import Path

from handouts.wording.kinds import lexicon
from handouts.wording.prose import FORENAME, NAME, Sentence

FILE = Path(__file__).parent / "lexicons" / "fr_in_english.txt"


SUBJECTS = frozenset("j je tu il elle on nous vous ils elles qui".split())
OBJECTS = {"l": "it", "la": "it", "le": "it", "les": "them", "leur": "them", "lui": "them", "m": "me", "me": "me", "nous": "us", "t": "you", "te": "you", "vous": "you"}
"""Who does something; and to whom or what, which French says before the verb, and English after it."""


class Glossary:
    """French words and what stands for them in English.

    lines: as in the file.
    """

    def __init__(self, lines: list[str]):
        self.words: dict[str, str] = {}
        self.together: dict[str, list[tuple[list[str], list[str]]]] = {}
        for line in lines:
            english, together, french = line.partition(" = ")
            if together:
                own = french.split()
                self.together.setdefault(own[0], []).append((own, english.split()))
            else:
                one, *several = line.split()
                self.words |= dict.fromkeys(several, one)
        for ways in self.together.values():
            ways.sort(key=lambda way: -len(way[0]))  # the longest that fits is taken

    def said(self, words: list[str]) -> list[str]:
        """English words, one for each of these French ones."""
        found: list[str] = []
        while len(found) < len(words):
            place = len(found)
            for own, english in self.together.get(words[place], ()):
                if words[place : place + len(own)] == own:
                    found += english
                    break
            else:
                found += self._turned(words, place) or [self._alone(words[place])]
        return found

    def _turned(self, words: list[str], place: int) -> list[str]:
        """ "tu me regardes" in the order of "you watch me"; nothing where no such words stand."""
        if words[place] not in SUBJECTS:
            return []
        verb = place + 1
        while verb < len(words) and words[verb] in OBJECTS:
            verb += 1
        if verb == place + 1 or verb >= len(words) or words[verb] not in self.words:
            return []
        return [self._alone(words[place]), self._alone(words[verb]), *(OBJECTS[word] for word in words[place + 1 : verb])]

    def _alone(self, word: str) -> str:
        """A word by itself; of an unknown compound its first known part, which is what it is; else the word as it is."""
        if word not in self.words and "-" in word:
            return next((self.words[part] for part in word.split("-") if part in self.words), word)
        return self.words.get(word, word)


@cache
def french() -> Glossary:
    """The glossary that is shipped."""
    return Glossary(FILE.read_text("utf-8").splitlines())


def glossing(language: str) -> Callable[[Sentence], Sentence] | None:
    """Says a sentence of this language in English; None of English itself."""
    if language == "en":
        return None
    glossary, known = french(), lexicon("en").known

    def glossed(sentence: Sentence) -> Sentence:
        words = glossary.said(sentence.words)
        classes = [
            known[word] | (bits & (NAME | FORENAME) if own not in glossary.words else 0)
            for word, own, bits in zip(words, sentence.words, sentence.classes, strict=True)
        ]
        return sentence.said(words, classes, glossary.said(sentence.lead))

    return glossed
