"""Says a French sentence in English, a word for each of its words.

All that was learnt was learnt from English, and most of it holds in French too:
who is told to look at what, and whether words say the place that is pointed
at.  So a French sentence is asked about as the row of English words that stand
for its own, such as "tenez la barre comme ça" as "hold the bar like this".
That is no English that anybody would write, but each of its words stands for
one of the author's, so that what is found of it is found of that one.

`lexicons/fr_in_english.txt` has the words, a line each: an English word and
the French ones that it stands for, or, with a "=" between, some English words
and as many French ones that mean something else together than one by one:
"until the moment that = jusqu à ce que".
"""

from collections.abc import Callable, Iterable, Iterator
from functools import cache
from pathlib import Path

from handouts.wording.kinds import lexicon
from handouts.wording.prose import FORENAME, LEAD, NAME, PAUSES, Sentence

FILE = Path(__file__).parent / "lexicons" / "fr_in_english.txt"

SUBJECTS = frozenset("j je tu il elle on nous vous ils elles qui".split())
OBJECTS = {"l": "it", "la": "it", "le": "it", "les": "them", "leur": "them", "lui": "them", "m": "me", "me": "me", "nous": "us", "t": "you", "te": "you", "vous": "you"}
"""Who does something; and to whom or what, which French says before the verb, and English after it."""
_BEFORE_VERBS = SUBJECTS | OBJECTS.keys()
LOOKS = lexicon("en").mask("colour", "looks")
_NO_NAMES = PAUSES | OBJECTS.keys() | frozenset("au aux ce ces cet cette de des du et est sont en ou pas plus moins très trop bien un une mon ma mes ton ta tes".split())
"""Words after which a colour is not that of the thing before."""


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

    def said(self, words: list[str]) -> list[tuple[str, int]]:
        """English words, in the order of English, each with the place of the French one that it stands for."""
        found: list[tuple[str, int]] = []
        known = lexicon("en").known
        while len(found) < len(words):
            place = len(found)
            for own, english in self.together.get(words[place], ()):
                if words[place : place + len(own)] == own:
                    found += zip(english, range(place, place + len(own)), strict=True)
                    break
            else:
                order = self._verb_first(words, place) or [place]
                found += ((self._alone(words, one), one) for one in order)
                if place and known[found[-1][0]] & LOOKS and words[place - 1] not in _NO_NAMES:
                    found[-2:] = found[-1], found[-2]  # "élastique rouge": "red band"
        return found

    def _verb_first(self, words: list[str], place: int) -> list[int]:
        """The places of "tu me regardes" in the order of "you watch me"; nothing where no such words stand."""
        if words[place] not in SUBJECTS:
            return []
        verb = place + 1
        while verb < len(words) and words[verb] in OBJECTS:
            verb += 1
        if verb == place + 1 or verb >= len(words) or words[verb] not in self.words:
            return []
        return [place, verb, *range(place + 1, verb)]

    def _alone(self, words: list[str], place: int) -> str:
        """One of some words by itself; of an unknown compound its first known part, which is what it is; else the word as it is."""
        word = words[place]
        if place and word in OBJECTS and words[place - 1] in _BEFORE_VERBS:
            return OBJECTS[word]
        if word not in self.words and "-" in word:
            return next((self.words[part] for part in word.split("-") if part in self.words), word)
        return self.words.get(word, word)


@cache
def french() -> Glossary:
    """The glossary that is shipped."""
    return Glossary(FILE.read_text("utf-8").splitlines())


def glossing(language: str) -> Callable[[Iterable[Sentence]], Iterator[Sentence]] | None:
    """Says the sentences of texts in this language in English; None of English itself."""
    if language == "en":
        return None
    glossary, known = french(), lexicon("en").known

    def glossed(every: Iterable[Sentence]) -> Iterator[Sentence]:
        text = ""
        lead: list[str] = []
        for sentence in every:
            if sentence.text is not text:
                text, lead = sentence.text, []
            told = glossary.said(sentence.words)
            words, places = [word for word, _ in told], [place for _, place in told]
            classes = [known[word] for word in words]
            for number, place in enumerate(places):
                if bits := sentence.classes[place] & (NAME | FORENAME):
                    classes[number] |= bits if sentence.words[place] not in glossary.words else 0
            yield sentence.said(words, classes, lead, places)
            lead = (lead + words)[-LEAD:]

    return glossed
