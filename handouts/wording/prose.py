"""From an author's file to sentences of words, each word knowing its place in the file.

Markdown is read just far enough that no mark-up hides a phrase and nothing
that is not prose is read: front matter, code, HTML, comments and link
addresses are blanked out, character for character, so that every offset stays
the author's own.  Emphasis, list markers, quote marks, line breaks and doubled
spaces are simply not words.

Every step is one pass from left to right; no pattern here looks back over more
than one word, break or address, so the time grows with the length of the text
and no faster.  A group never repeats possessively ("(?:ab)*+"): Python before
3.11.5, which Debian 12 has, then reads on past a turn that failed half-way and
takes the comma of "14, or" for a part of the number.
"""

import re
import unicodedata
from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

LONGEST_SENTENCE = 1500
"""Characters after which a sentence without an end is cut at a space.

Prose does not come near it; it keeps one line of 20 MB from being one sentence.
"""

SAME_FEW = 40
"""Words that are read of a sentence of more than twice as many that has fewer than one different word in eight."""

_FENCE = re.compile(r"[ ]{0,3}(`{3,}|~{3,})")
_FRONT_MATTER_END = re.compile(r"\n(?:---|\.\.\.)[ \t]*(?=\n|$)")
_INDENTED = re.compile(r"(?: {4}|\t)[ \t]*\S")
_LIST_ITEM = re.compile(r"[ \t]*(?:[-*+]|\d{1,9}[.)])(?:[ \t]|$)")
_BACKTICKS = re.compile(r"`++")
_ADDRESSES = re.compile(
    r"\]\((?:<[^<>\n]*+>|[^\s()]*+(?:\([^\s()]*+\)[^\s()]*+)*)(?:\s++(?:\"[^\"\n]*+\"|'[^'\n]*+'))?\s*+\)"  # ](address "title")
    r"|(?<=\])\[[^\[\]\n]*+\]"  # [words][label]
    r"|(?m:^[ ]{0,3}\[[^\[\]\n]++\]:[^\n]*+)"  # [label]: address
    r"|<(?:[A-Za-z/][^<>]*+|![A-Za-z\[][^<>]*+|\?[^<>]*+)>"  # a tag, or an address in angle brackets
    r"|\bhttps?://[^\s<>]++"
)
_NOT_A_LINE_END = re.compile(r"[^\n]+")

_BREAK = re.compile(
    r"[.!?…][.!?…\"'”’»)\]*_]{0,8}+(?=\s)"  # the end of a sentence
    r"|\n[ \t\n]*\n"  # empty lines
    r"|\n(?=[ \t]*(?:[-*+][ \t]|\d{1,9}[.)][ \t]|\#{1,6}[ \t]|>|\||(?:={2,}|-{2,})[ \t]*(?:\n|$)))"  # of a block
    r"|(?m:(?<=\n)[ ]{0,3}\#{1,6}[ \t][^\n]*+)"  # a heading is a block of its own
    r"|\|"  # of a cell
)
_ABBREVIATIONS = frozenset(
    "e.g i.e eg ie etc vs approx fig figs no nos dr mr mrs ms st min mins sec secs max cf resp ca p pp vol ex incl".split()
)
_LAST_WORD = re.compile(r"[\w.]+$")
_ABBREVIATIONS_END = frozenset(f" {word}"[-2:] for word in _ABBREVIATIONS)
"""The last two characters of an abbreviation, to leave most words alone."""

_TOKEN = re.compile(
    r"\d+(?:[.,:/]\d+)*(?:[^\W\d_]+)?"
    r"|[^\W\d_][\u0300-\u036f]*+(?:[^\W_][\u0300-\u036f]*+)*(?:['’ʼ‑\-](?:[^\W_][\u0300-\u036f]*+)+)*"
    r"|(?<=\s)-{1,3}(?=\s)|[,;:()!?.…—–%°×]"
)
_LETTERS = re.compile(r"[^\W\d_]+")
_CAPITALS = re.compile(r"[A-ZÀ-Þ][^\W\d_A-ZÀ-Þ]+")
_CLITICS = {"re": "are", "ll": "will", "ve": "have", "m": "am", "d": "would", "s": "'s"}
_SHORT_FORMS = {"can't": "can", "won't": "will", "shan't": "shall", "ain't": "is"}
_ONE_WORD = {"gonna": "going", "wanna": "want", "gotta": "got", "em": "them", "ya": "you", "yer": "your", "yo": "you"}
PAUSES = frozenset(",;:()!?.—")
NAME = 2
"""The bit of the class `name`, the second class of every lexicon: unknown words with a capital inside a sentence."""
FORENAME = 4
"""The bit of the class `forename`, the third: common words that are names when they have a capital."""
LEAD = 30
"""Words before a sentence that it is read with."""


class Cut(NamedTuple):
    """A text as it is read.

    prose: as `blank_out` gives it.
    spans: start and end of each sentence, in order, as `sentence_spans` gives them.
    """

    prose: str
    spans: list[tuple[int, int]]


def cut(text: str) -> Cut:
    prose = blank_out(text)
    return Cut(prose, list(sentence_spans(prose)))


class Sentence:
    """One sentence: its words in lower case, and where each stands in the file.

    words: the words and pauses in order.  A contraction is two words ("don't"
        is "do" and "not", "mine's" is "mine" and "'s"); quote marks and
        emphasis are left out; a dash is "—"; other pauses stand as they are.
    starts, ends: character offsets in the author's text, one pair a word.
        They are worked out when they are first asked for: most sentences have
        no mark and need none.
    classes: one integer a word, the bits of the lexicon classes it is in.
    earlier: the words of the two sentences before, in lower case.
    lead: the words and pauses before it, in order; up to LEAD of them.
    written: the sentence as the author wrote it: itself, unless it is one `said` in other words.
    places: in that case, of each word, the place of the author's word that it stands for; else None.
    """

    __slots__ = ("_before", "_earlier", "_ends", "_offset", "_piece", "_starts", "_written", "classes", "lead", "places", "text", "words")

    def __init__(
        self,
        text: str,
        piece: str,
        offset: int,
        words: list[str],
        classes: list[int],
        before: tuple[str, str],
        lead: list[str],
    ):
        self.text = text
        self.words = words
        self.classes = classes
        self.lead = lead
        self._before = before
        self._earlier: list[str] | None = None
        self._piece = piece
        self._offset = offset
        self._starts: list[int] | None = None
        self._ends: list[int] = []
        self._written: Sentence | None = None
        self.places: list[int] | None = None

    def said(self, words: list[str], classes: list[int], lead: list[str], places: list[int]) -> "Sentence":
        """The same sentence in other words, one for each of its own, perhaps in another order."""
        other = Sentence(self.text, self._piece, self._offset, words, classes, self._before, lead)
        other._written, other.places = self, places
        return other

    @property
    def written(self) -> "Sentence":
        return self._written or self

    @property
    def earlier(self) -> list[str]:
        if self._earlier is None:
            self._earlier = _LETTERS.findall(" ".join(self._before).lower())
        return self._earlier

    @property
    def starts(self) -> list[int]:
        if self._starts is None:
            self._starts, self._ends = _places(self._piece, self._offset)
        return self._starts

    @property
    def ends(self) -> list[int]:
        if self._starts is None:
            self._starts, self._ends = _places(self._piece, self._offset)
        return self._ends

    def quote(self, first: int, last: int) -> str:
        """The author's own characters from word `first` to before word `last`."""
        return self.text[self.starts[first] : self.ends[last - 1]]


def word_at(words: list[str], place: int, beyond: str = "") -> str:
    """The word at a place of a sentence, or `beyond` before its first and after its last."""
    return words[place] if 0 <= place < len(words) else beyond


def sentences(
    text: str,
    known: Mapping[str, int],
    apart: Callable[[str], str] = lambda prose: prose,
    already: Cut | None = None,
) -> Iterator[Sentence]:
    """The sentences of `text` that have words.

    known: from any word in lower case to its class bits.
    already: the text cut, where the caller has it.
    apart: parts the words of a language that are written as one, each
        character in its place.
    """
    prose, spans = already or cut(text)
    prose = apart(prose)
    last = last_but_one = ""
    lead: list[str] = []
    for start, end in spans:
        piece = prose[start:end]
        if not piece.isspace() and (sentence := _sentence(text, piece, start, known, (last_but_one, last), lead)).words:
            yield sentence
            lead = (lead + sentence.words)[-LEAD:]
        last_but_one, last = last, piece


def _sentence(
    text: str, piece: str, offset: int, known: Mapping[str, int], before: tuple[str, str], lead: list[str]
) -> Sentence:
    words = _words(piece)
    classes = list(map(known.__getitem__, words))
    for capital in _CAPITALS.findall(piece):
        name = capital.lower()
        bits = known[name]
        if not bits or bits & FORENAME:
            if words[:1] == [name]:
                classes[0] |= 0 if bits else NAME
                continue
            for place, word in enumerate(words):
                if word == name:
                    classes[place] |= NAME
    return Sentence(text, piece, offset, words, classes, before, lead)


def _words(piece: str) -> list[str]:
    """The words of a sentence, as `Sentence.words` holds them."""
    piece = piece.lower()
    words = _worth_reading(_TOKEN.findall(piece))
    plain = piece.isascii() and "'" not in piece and "-" not in piece
    if plain and _ONE_WORD.keys().isdisjoint(words) and not _repeats(words):
        return words
    return [part for word, parts, _, _ in _read(words) for part in parts]


def _places(piece: str, offset: int) -> tuple[list[int], list[int]]:
    """Start and end of each of `_words(piece)` in the author's text."""
    starts: list[int] = []
    ends: list[int] = []
    found = list(_TOKEN.finditer(piece))
    for word, parts, first, last in _read(_worth_reading([one.group().lower() for one in found])):
        start, end = offset + found[first].start(), offset + found[last].end()
        if len(parts) == 2:
            cut = end - len(word.rpartition("'")[2]) - 1 if parts[1] != "not" else min(start + len(parts[0]), end - 3)
            starts += (start, cut)
            ends += (cut, end)
        else:
            starts.append(start)
            ends.append(end)
    return starts, ends


def _worth_reading(words: list[str]) -> list[str]:
    """All the words, or the first of them where a long sentence only says the same few again and again."""
    if len(words) > 2 * SAME_FEW and len(set(words)) * 8 < len(words):
        return words[:SAME_FEW]
    return words


def _repeats(words: list[str]) -> bool:
    """Whether some word stands three times in a row."""
    return any(one == other == third for one, other, third in zip(words, words[1:], words[2:], strict=False))


def _read(words: list[str]) -> Iterator[tuple[str, tuple[str, ...], int, int]]:
    """Each token as written, the one or two words it is read as, and the first and last token that it stands for.

    A long run of one word says no more than two of it, and is read as two.
    """
    count = len(words)
    place = 0
    while place < count:
        word = words[place]
        first = place
        if place + 1 < count and words[place + 1] == word and (place == 0 or words[place - 1] != word):
            place += 1
            yield word, _parts(word), first, first
            first = place
            while place + 1 < count and words[place + 1] == word:
                place += 1
        yield word, _parts(word), first, place
        place += 1


def _parts(word: str) -> tuple[str, ...]:
    """The one or two words that a token is read as."""
    if not word.isascii():
        word = unicodedata.normalize("NFC", word).replace("’", "'").replace("ʼ", "'").replace("‑", "-")
        if word in ("–", "—"):
            return ("—",)
        if word == "…":
            return (".",)
    if word[0] == "-":
        return ("—",)
    if "'" in word:
        stem, _, tail = word.rpartition("'")
        if tail == "t" and stem.endswith("n"):
            if stem == "n":  # cut off from its verb: "were n't"
                return ("not",)
            return (_SHORT_FORMS.get(word, stem[:-1]), "not")
        if tail in _CLITICS:
            return (stem, _CLITICS[tail])
    return (_ONE_WORD.get(word, word),)


def sentence_spans(prose: str) -> Iterator[tuple[int, int]]:
    """Start and end of each sentence, in order; none longer than LONGEST_SENTENCE.

    prose: as `blank_out` gives it.
    """
    start = 0
    for found in _BREAK.finditer(prose):
        end = found.end()
        if found.group()[0] == ".":
            before = found.start()
            two = prose[before - 2 : before].lower()
            likely = two in _ABBREVIATIONS_END or not two[:1].isalnum()
            last = _LAST_WORD.search(prose, max(start, before - 12), before) if likely else None
            if last and last.group().lower() in _ABBREVIATIONS:
                continue
        while end - start > LONGEST_SENTENCE:
            cut = _cut(prose, start)
            yield start, cut
            start = cut
        if end > start:
            yield start, end
        start = end
    end = len(prose)
    while end - start > LONGEST_SENTENCE:
        cut = _cut(prose, start)
        yield start, cut
        start = cut
    if end > start:
        yield start, end


def _cut(prose: str, start: int) -> int:
    limit = start + LONGEST_SENTENCE
    space = prose.rfind(" ", start + 1, limit)
    return space if space > start else limit


def blank_out(text: str) -> str:
    """`text` with everything that is not prose turned to spaces, the same length, the same lines."""
    text = _blanked(text, _no_prose(text))
    if "<!--" in text:
        text = _blanked(text, _comments(text))
    if "`" in text:
        text = _blanked(text, _code_spans(text))
    if "](" in text or "][" in text or "]:" in text or "<" in text or "://" in text:
        text = _ADDRESSES.sub(_blank, text)
    return text


def comments(text: str) -> list[tuple[int, int]]:
    """Start and end of each HTML comment that stands outside front matter and code."""
    if "<!--" not in text:
        return []
    found = _comments(_blanked(text, _no_prose(text)))
    return [(start, end) for start, end in found if text[start - 1 : start] != "`" or text[end : end + 1] != "`"]


def front_matter_end(text: str) -> int:
    """The place after the front matter's last line, 0 where there is none."""
    if text.startswith("---") and text[3:4] in ("\n", " ", "\r"):
        end = _FRONT_MATTER_END.search(text, 3)
        if end:
            return end.end()
    return 0


def _no_prose(text: str) -> list[tuple[int, int]]:
    """Where front matter and blocks of code stand."""
    start = front_matter_end(text)
    cuts = [(0, start)] if start else []
    if "```" in text or "~~~" in text or "\n    " in text or "\n\t" in text or text.startswith(("    ", "\t")):
        cuts += _code_blocks(text, start)
    return cuts


def _blank(found: re.Match[str]) -> str:
    return _NOT_A_LINE_END.sub(lambda run: " " * len(run.group()), found.group())


def _blanked(text: str, cuts: list[tuple[int, int]]) -> str:
    if not cuts:
        return text
    parts: list[str] = []
    at = 0
    for start, end in cuts:
        parts.append(text[at:start])
        parts.append(_NOT_A_LINE_END.sub(lambda run: " " * len(run.group()), text[start:end]))
        at = end
    parts.append(text[at:])
    return "".join(parts)


def _code_blocks(text: str, start: int) -> list[tuple[int, int]]:
    """Fenced code, and code by four spaces where no list is open."""
    cuts: list[tuple[int, int]] = []
    fence = ""
    opened = at = start
    after_blank, in_list = True, False
    for line in text[start:].splitlines(keepends=True):
        end = at + len(line)
        mark = _FENCE.match(line)
        if fence:
            if mark and mark.group(1).startswith(fence) and not line[mark.end() :].strip():
                cuts.append((opened, end))
                fence, after_blank = "", True
        elif mark and "`" not in line[mark.end() :]:
            fence, opened = mark.group(1), at
        elif not line.strip():
            after_blank = True
        elif _INDENTED.match(line) and after_blank and not in_list:
            cuts.append((at, end))
        else:
            if _LIST_ITEM.match(line):
                in_list = True
            elif not line[0].isspace():
                in_list = False
            after_blank = False
        at = end
    if fence:
        cuts.append((opened, len(text)))
    return cuts


def _comments(text: str) -> list[tuple[int, int]]:
    cuts: list[tuple[int, int]] = []
    at = text.find("<!--")
    while at >= 0:
        end = text.find("-->", at + 4)
        if end < 0:
            break
        cuts.append((at, end + 3))
        at = text.find("<!--", end + 3)
    return cuts


def _code_spans(text: str) -> list[tuple[int, int]]:
    """Code between two runs of as many backticks, within one paragraph."""
    runs = [found.span() for found in _BACKTICKS.finditer(text)]
    following: dict[int, int] = {}
    partner = [-1] * len(runs)
    for number in range(len(runs) - 1, -1, -1):
        length = runs[number][1] - runs[number][0]
        partner[number] = following.get(length, -1)
        following[length] = number
    cuts: list[tuple[int, int]] = []
    number = 0
    while number < len(runs):
        other = partner[number]
        if other >= 0 and "\n\n" not in text[runs[number][1] : min(runs[other][0], runs[number][1] + 4000)]:
            cuts.append((runs[number][0], runs[other][1]))
            number = other + 1
        else:
            number += 1
    return cuts
