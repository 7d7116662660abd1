"""Plain words to claims: what a message says, before it is held against anything.

It reads a slate line ("1 16 12 12 14"), numbers with stars from a phone's keys
("1*16*12*12"), what a voice was turned into ("seated press, ten pounds,
twelve"), and typed notes ("row R 20 kg 12/12/12; 41 min; effort 7").  Nothing
is decided here that needs the sheet, the kit or the log.
"""

from __future__ import annotations

import datetime
import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from decimal import Decimal

from handouts.amounts import MassUnit
from handouts.logbook.message import SESSION, Asked, Claim, Heard, Number, Same, Time, Warning, Weight
from handouts.logbook.names import Names
from handouts.logbook.tokens import LONGEST, Token, cut, with_numbers
from handouts.logbook.words import Words, folded, singular
from handouts.models import Side

_KEYS = re.compile(r"^[0-9]+(?:\*[0-9]+)+\*?$")
_QUESTION = re.compile(r"[^.;\n!?]*\?+")
_LEANING = re.compile(r"\b[cdjlmnst]['\u2019]$", re.IGNORECASE)
_LABEL_END = re.compile(r"[;\n]")
_SECONDS = {"hour": 3600, "minute": 60, "second": 1}


def hear(raw: str, names: Names, plans: tuple[str, ...], today: datetime.date) -> Heard:
    """What a message says.

    raw: at most LONGEST characters are heard; the rest is told as unread.
    plans: codes of the plans that a message may name.
    today: for "yesterday" and for days of the week, which mean the last such
        day that is not after today.
    """
    text, rest = raw[:LONGEST], raw[LONGEST:].strip()
    ears = _Ears(names, names.words, today)
    text = _take_plans(text, plans, ears)
    text = _take_labelled(text, ears)
    for segment in _segments(text):
        ears.segment(segment)
    heard = ears.heard()
    return replace(heard, unread=(*heard.unread, rest[:60])) if rest else heard


# --- what is taken out before the words are cut ---------------------------------


def _take_plans(text: str, plans: tuple[str, ...], ears: _Ears) -> str:
    """Plan and version, "P2 v1" or "version 1", heard and blanked out."""
    version = "|".join(re.escape(str(word)) for word in ears.words.table["version"])
    codes = "|".join(re.escape(code) for code in sorted(plans, key=len, reverse=True))
    patterns = [rf"()\b(?:{version})[ .]*([0-9]{{1,3}})\b"]
    if codes:
        patterns.insert(0, rf"\b({codes})\b(?:[ ,]*(?:{version})?[ .]*([0-9]{{1,3}})\b(?![ ]*[0-9]))?")
        patterns.insert(0, rf"\b({codes})(?:{version})([0-9]{{1,3}})\b")
    for pattern in patterns:
        for found in re.finditer(pattern, text, re.IGNORECASE):
            code = next((code for code in plans if code.lower() == found[1].lower()), "")
            ears.plans.append((code, int(found[2]) if found[2] else None))
            text = _blank(text, found.start(), found.end())
    return text


def _blank(text: str, start: int, end: int) -> str:
    return text[:start] + " " * (end - start) + text[end:]


def _take_labelled(text: str, ears: _Ears) -> str:
    """Notes and reader's questions, each to the end of its sentence."""
    for key in ("note", "question"):
        label = "|".join(str(word) for word in ears.words.table[key])
        while found := re.search(rf"\b(?:{label})\s*[:：]\s*", text, re.IGNORECASE):
            end = _LABEL_END.search(text, found.end())
            stop = end.start() if end else len(text)
            said = text[found.end() : stop].strip()
            if key == "note" and said:
                ears.notes.append(said)
            elif said:
                ears.ask(said, text[: found.start()])
            text = _blank(text, found.start(), stop)
    for found in _QUESTION.finditer(text):
        said = found[0].strip(" ,?")
        if said:
            ears.ask(f"{said}?", text[: found.start()])
        text = _blank(text, found.start(), found.end())
    return text


def _segments(text: str) -> Iterator[tuple[str, str]]:
    """Pieces between full stops, semicolons and line ends, with what ended the
    piece before.  A point inside a number is no full stop."""
    ended, start = "", 0
    for found in re.finditer(r"[;\n!]|\.(?=\s|$)", text):
        if text[start : found.start()].strip():
            yield text[start : found.start()], ended
        ended, start = found[0], found.end()
    if text[start:].strip():
        yield text[start:], ended


# --- the ears --------------------------------------------------------------------


@dataclass
class _Open:
    """A claim while it is being heard."""

    name: str = ""
    number: int | None = None
    id: str = ""
    side: Side | None = None
    on_cuff: bool = False
    weights: list[Weight] = field(default_factory=list)
    numbers: list[Number] = field(default_factory=list)
    times: list[Time] = field(default_factory=list)
    metres: int | None = None
    rounds: int | None = None
    skipped: bool = False
    same: Same | None = None
    words: list[str] = field(default_factory=list)

    @property
    def has_data(self) -> bool:
        return bool(self.weights or self.numbers or self.metres or self.skipped or self.same or self.times)

    @property
    def named(self) -> bool:
        return bool(self.name or self.number is not None or self.id)

    def closed(self) -> Claim:
        return Claim(
            self.name,
            self.number,
            self.id,
            self.side,
            self.on_cuff,
            tuple(self.weights),
            tuple(self.numbers),
            tuple(self.times),
            self.metres,
            self.rounds,
            self.skipped,
            self.same,
            " ".join(self.words),
        )


class _Ears:
    """Listens to one message, segment by segment.  Lives for one message."""

    def __init__(self, names: Names, words: Words, today: datetime.date):
        self.names, self.words, self.today = names, words, today
        self.claims: list[_Open] = []
        self.current: _Open | None = None
        self.efforts: list[tuple[str, Decimal]] = []
        self.dates: list[tuple[str, datetime.date | None]] = []
        self.plans: list[tuple[str, int | None]] = []
        self.warnings: list[Warning] = []
        self.asked: list[Asked] = []
        self.notes: list[str] = []
        self.unread: list[str] = []
        self.skip_next = False
        self.total_said = False

    def heard(self) -> Heard:
        kept = [claim.closed() for claim in self.claims if claim.named or claim.has_data]
        kept = [
            claim
            for claim in kept
            if not (claim.name or claim.number is not None)
            or claim != Claim(claim.name, claim.number)
            or not self._spoken_for(claim)
        ]
        notes = [*self.notes, *(" ".join(c.words) for c in self.claims if not (c.named or c.has_data) and c.words)]
        if notes:
            kept.append(Claim(id=SESSION, note="; ".join(notes)))
        return Heard(
            tuple(kept),
            tuple(self.efforts),
            tuple(self.dates),
            tuple(self.plans),
            tuple(self.warnings),
            tuple(self.asked),
            tuple(self.unread),
        )

    def _spoken_for(self, claim: Claim) -> bool:
        """A name alone that a question or a warning was about is no claim."""
        about = {*(asked.exercise for asked in self.asked), *(warning.exercise for warning in self.warnings)}
        return claim.name in about

    def ask(self, said: str, before: str) -> None:
        """A reader's question: about the exercise in it, else the one before it."""
        self.asked.append(Asked(said, self._name_in(said) or self._last_name_in(before)))

    def _name_in(self, text: str) -> str:
        tokens = cut(text, self.words)
        return next((name for name, _, _ in self._all_names(tokens, text)), "")

    def _last_name_in(self, text: str) -> str:
        tokens = cut(text, self.words)
        found = [name for name, _, _ in self._all_names(tokens, text)]
        return found[-1] if found else ""

    def _all_names(self, tokens: list[Token], text: str) -> Iterator[tuple[str, int, int]]:
        at = 0
        while at < len(tokens):
            end = self.names.run(tokens, at)
            if end > at:
                yield text[tokens[at].start : tokens[end - 1].end], at, end
            at = max(end, at + 1)

    # --- one segment ---------------------------------------------------------

    def segment(self, piece: tuple[str, str]) -> None:
        text, ended = piece
        if _KEYS.match(text.strip()):
            text = text.replace("*", " ")
        tokens = cut(text, self.words)
        continues = ended == "." and self.current is not None and not self.current.numbers
        if not continues:
            self.current = None
        self.total_said = False
        for part in self._without_warnings(tokens, text):
            _Part(self, part, text).hear()

    def open(self, **given: object) -> _Open:
        claim = _Open(**given)  # type: ignore[arg-type]
        if self.skip_next and claim.named:
            claim.skipped, self.skip_next = True, False
        self.claims.append(claim)
        self.current = claim
        return claim

    def session(self) -> _Open:
        """The claim that holds what is said of the whole session."""
        for claim in self.claims:
            if claim.id == SESSION:
                return claim
        claim = _Open(id=SESSION)
        self.claims.append(claim)
        return claim

    # --- warnings ------------------------------------------------------------

    def _without_warnings(self, tokens: list[Token], text: str) -> Iterator[list[Token]]:
        """The runs of tokens that are not about pain; the others are kept as
        warnings, word for word, once what stood before them has been heard."""
        clause: list[Token] = []
        clauses: list[list[Token]] = []
        for token in tokens:
            soft = token.text == "," or (token.kind == "word" and self.words.has("but", token.text))
            if soft and clause:
                clauses.append(clause)
                clause = []
            clause.append(token)
        clauses.append(clause)
        run: list[Token] = []
        for clause in clauses:
            before, pain, after = self._pain_in(clause)
            run += before
            if pain:
                if run:
                    yield run
                run = list(after)
                self._warn(pain, text)
        if run:
            yield run

    def _pain_in(self, clause: list[Token]) -> tuple[list[Token], list[Token], list[Token]]:
        """A clause as (claims, warning, claims); the last two may be empty."""
        clause = self._without_denials(clause)
        at = self._pain_word(clause)
        if at is None:
            return clause, [], []
        start = 0
        for index in range(at):
            is_number = clause[index].kind in ("number", "clock") or (
                clause[index].kind == "word"
                and self.words.number(clause[index].text) is not None
                and not self.words.has("filler", clause[index].text)
            )
            if is_number:
                start = index + 1
                while start < at and self._belongs_to_number(clause[start]):
                    start += 1
        end = len(clause)
        for index in range(at + 1, len(clause)):
            run = self.names.run(clause, index)
            following = clause[run] if index < run < len(clause) else None
            if following is not None and (following.kind == "number" or self.words.number(following.text) is not None):
                end = index
                break
        head = clause[:start]
        if start == 0 and clause and clause[0].text == ",":
            start = 1
        return head, clause[start:end], clause[end:]

    def _belongs_to_number(self, token: Token) -> bool:
        if token.kind != "word":
            return False
        return bool(self.words.unit(token.text)) or any(
            self.words.has(key, token.text) for key in ("reps", "sets", "rounds", "each")
        )

    def _without_denials(self, clause: list[Token]) -> list[Token]:
        """A clause without "no pain", "pain: no" and "no knee pain".  What else
        hurts in the same breath stays."""
        said = [token.text for token in clause if token.kind == "word"]
        if len(said) == 2 and self.words.has("pain_label", said[0]) and self.words.has("none", said[1]):
            return []
        kept: list[Token] = []
        at = 0
        while at < len(clause):
            used = self._denial_at(clause, at)
            if not used:
                kept.append(clause[at])
            at += used or 1
        return kept

    def _denial_at(self, clause: list[Token], at: int) -> int:
        """How many tokens from here deny a pain; 0 for none."""
        said = [token.text if token.kind == "word" else "" for token in clause[at : at + 4]]
        for run in self.words.phrases("no_pain"):
            if tuple(said[: len(run)]) == run:
                return len(run)
        body = len(said) > 2 and self.words.has("none", said[0]) and self.words.is_body(said[1])
        return 3 if body and self._run_at(clause, at + 2, "pain") else 0

    def _pain_word(self, clause: list[Token]) -> int | None:
        for index, _ in enumerate(clause):
            for key in ("pain", "stop_signs"):
                if self._run_at(clause, index, key) and not self._in_name(clause, index):
                    return index
        return None

    def _in_name(self, clause: list[Token], index: int) -> bool:
        """ "Chest stretch" and "chest press" are exercises, no sign to stop."""
        for start in range(max(0, index - 3), index + 1):
            end = self.names.run(clause, start)
            if start <= index < end:
                return True
        pair = self.names.said(token.text for token in clause[index : index + 2] if token.kind == "word")
        return len(pair) == 2 and bool(self.names.within(pair, self.names.by_id))

    def _run_at(self, clause: list[Token], index: int, key: str) -> bool:
        if clause[index].kind != "word":
            return False
        for run in self.words.phrases(key):
            said = [token.text for token in clause[index : index + len(run)] if token.kind == "word"]
            if tuple(said) == run or (len(run) == 1 and len(said) == 1 and singular(said[0]) == singular(run[0])):
                return True
        return False

    def _warn(self, pain: list[Token], text: str) -> None:
        said = text[_from(text, pain[0].start) : pain[-1].end].strip(" ,")
        for word in self.words.table["but"]:
            if folded(said).startswith(f"{word} "):
                said = said[len(str(word)) + 1 :].strip()
        current = self.current
        self.warnings.append(Warning(said, self._name_in(said) or (current.name if current else "")))


class _Part:
    """Listens to the tokens of one segment, without its warnings."""

    def __init__(self, ears: _Ears, tokens: list[Token], text: str):
        self.ears, self.words, self.text = ears, ears.words, text
        self.names: dict[int, int] = {}
        shielded: list[Token] = []
        at = 0
        while at < len(tokens):
            end = ears.names.run(tokens, at)
            if end > at:
                self.names[len(shielded)] = 1
                start, last = tokens[at], tokens[end - 1]
                # A name is one token: "one-arm row" holds no number.
                shielded.append(replace(start, kind="sign", text="\0name", end=last.end))
                at = end
            else:
                shielded.append(tokens[at])
                at += 1
        self.tokens = with_numbers(shielded, self.words)
        self.at = 0
        self.loose: list[Token] = []

    def hear(self) -> None:
        self._leading_day()
        if self._is_slate_line():
            self._slate_number()
        while self.at < len(self.tokens):
            before = self.at
            self._step()
            # Whatever comes, each step leaves at least one token behind.
            self.at = max(self.at, before + 1)
        self._put_loose_words()

    # --- looking -------------------------------------------------------------

    def _peek(self, ahead: int = 0) -> Token | None:
        index = self.at + ahead
        return self.tokens[index] if index < len(self.tokens) else None

    def _word(self, ahead: int = 0) -> str:
        token = self._peek(ahead)
        return token.text if token is not None and token.kind == "word" else ""

    def _sign(self, ahead: int = 0) -> str:
        token = self._peek(ahead)
        return token.text if token is not None and token.kind == "sign" else ""

    def _number(self, ahead: int = 0) -> Token | None:
        token = self._peek(ahead)
        return token if token is not None and token.kind == "number" else None

    def _unit(self, ahead: int) -> str | None:
        word = self._word(ahead)
        return self.words.unit(word) if word else None

    def _run(self, key: str) -> int:
        """How many words from here are one of a list's entries; 0 for none."""
        for run in self.words.phrases(key):
            if tuple(self._word(n) for n in range(len(run))) == run:
                return len(run)
        word = self._word()
        return 1 if word and self.words.has(key, word) else 0

    def _is_slate_line(self) -> bool:
        """A number, and more numbers after it: the exercise's number comes first."""
        first, second = self._number(), self._number(1)
        if self.ears.current is not None or first is None or not _whole(first):
            return False
        if second is None:
            sign = self._sign(1)
            after = self._number(2)
            return sign in (":", ")", ".", "-", "*") and after is not None and not self._unit(1)
        return not first.split and self._sign(1) != "x"

    def _slate_number(self) -> None:
        first = self._number()
        assert first is not None
        self.ears.open(number=int(first.value))
        self.at += 1 if self._number(1) is not None else 2

    def _leading_day(self) -> None:
        """A day at the start: the line goes on behind it."""
        while (token := self._peek()) is not None:
            if token.kind in ("date", "unclear"):
                self.ears.dates.append((token.text, token.date))
                self.at += 1
            elif used := self._day():
                self.at += used
            elif token.kind == "sign" and token.text in (":", ",", "-", "–") and self.at:
                self.at += 1
            else:
                return

    # --- one step --------------------------------------------------------------

    def _step(self) -> None:
        token = self.tokens[self.at]
        if self._begins_exercise(token):
            return
        if token.kind == "number" and (used := self._day()):
            self.at += used
        elif token.kind == "number":
            self._hear_number(token)
        elif token.kind == "clock":
            self._put_loose_words()
            if (seconds := _clock(token.text)) is None:
                self.ears.unread.append(token.text)
            else:
                self._time(Time(seconds, "clock", self.ears.total_said))
            self.at += 1
        elif token.kind in ("date", "unclear"):
            self.ears.dates.append((token.text, token.date))
            self.at += 1
        elif token.kind == "word":
            self._hear_word(token)
        else:
            if token.text == ",":
                self._put_loose_words()
            self.at += 1

    def _begins_exercise(self, token: Token) -> bool:
        if token.text == "\0name":
            before = [loose for loose in self.loose if not self.words.has("filler", loose.text)]
            start = before[0].start if before and self._after_edge(before[0]) and len(before) <= 2 else token.start
            if start < token.start:
                self.loose.clear()
            else:
                self._put_loose_words()
            self.ears.open(name=self.text[start : token.end])
            self.at += 1
            return True
        is_label = (token.kind == "word" and self.words.has("exercise", token.text)) or token.text == "#"
        number = self._number(1) if is_label else None
        if number is not None and _whole(number):
            self._put_loose_words()
            self.ears.open(number=int(number.value))
            self.at += 2
            return True
        return False

    def _after_edge(self, token: Token) -> bool:
        """Whether a word stands at the start of its segment or after a comma,
        small words aside."""
        index = next(i for i, other in enumerate(self.tokens) if other.start == token.start)
        while index > 0:
            before = self.tokens[index - 1]
            if before.kind == "sign" and before.text == ",":
                return True
            if before.kind != "word" or not self.words.has("filler", before.text):
                return False
            index -= 1
        return True

    # --- numbers ---------------------------------------------------------------

    def _hear_number(self, token: Token) -> None:
        unit = self._unit(1)
        if self._skip_sets(token):
            return
        if unit in ("kg", "lb"):
            self._weight(token, unit, 2)
        elif unit in _SECONDS:
            self._spoken_time()
        elif unit == "metre":
            claim = self._claim_here()
            claim.metres = int(token.value)
            self.at += 2
        elif self._number(2) is not None and (self._sign(1) in ("x", "*") or self._run_times(1)):
            self._product(token)
        elif self._word(1) and self.words.has("reps", self._word(1)):
            claim = self._claim_here()
            claim.numbers.append(replace(_as_number(token), counted=True))
            self.at += 2
        elif self._word(1) and self.words.has("rounds", self._word(1)):
            self.ears.session().rounds = int(token.value)
            self.at += 2
        elif self._sign(1) == "/" and self._is_ten(2) and self.ears.current is None:
            self.ears.unread.append(self.text[token.start : self.tokens[self.at + 2].end])
            self.at += 3
        else:
            self._bare(token)

    def _run_times(self, ahead: int) -> bool:
        return bool(self._word(ahead)) and self.words.has("times", self._word(ahead))

    def _is_ten(self, ahead: int) -> bool:
        token = self._number(ahead)
        return token is not None and token.value == 10

    def _skip_sets(self, token: Token) -> bool:
        """ "3 sets of 12"."""
        if not (self._word(1) and self.words.has("sets", self._word(1))):
            return False
        ahead = 2
        while self._word(ahead) and self.words.has("filler", self._word(ahead)):
            ahead += 1
        number = self._number(ahead)
        if number is None:
            self._claim_here().words.append(self.text[token.start : self.tokens[self.at + 1].end])
            self.at += 2
            return True
        self._claim_here().numbers.append(replace(_as_number(number), sets=_small(token)))
        self.at += ahead + 1
        return True

    def _product(self, token: Token) -> None:
        """ "2 x 12 kg" is two weights, "3 x 12" three sets, "x 15" after a
        weight fifteen repetitions."""
        second = self._number(2)
        assert second is not None
        unit = self._unit(3)
        if unit in ("kg", "lb"):
            start = token.start
            self.at += 2
            self._weight(second, unit, 2, pieces=_small(token), start=start)
            return
        self._claim_here().numbers.append(replace(_as_number(second), sets=_small(token)))
        self.at += 3

    def _weight(self, token: Token, unit: str, used: int, pieces: int = 0, start: int | None = None) -> None:
        claim = self._claim_here()
        end = self.tokens[self.at + used - 1].end
        self.at += used
        if self._word() and self.words.has("each", self._word()):
            pieces = pieces or 1
            self.at += 1
            while self._word() and self.words.has("filler", self._word()):
                self.at += 1
        mass: MassUnit = "kg" if unit == "kg" else "lb"
        said = self.text[token.start if start is None else start : end]
        claim.weights.append(Weight(token.value, mass, pieces, said))
        if self._sign() in ("x", "*") or self._run_times(0):
            self.at += 1

    def _spoken_time(self) -> None:
        """ "24 min", "1 h 05", "1 min 30 s"."""
        seconds, finest = 0, "hour"
        start = self.at
        while (number := self._number()) is not None:
            unit = self._unit(1)
            if unit not in _SECONDS:
                if finest == "hour" and self.at > start and number.value < 60 and number.glued:
                    seconds += int(number.value) * 60
                    self.at += 1
                break
            assert unit is not None
            if self.at > start and _SECONDS[unit] >= _SECONDS[finest]:
                break
            seconds += int(number.value * _SECONDS[unit])
            finest = unit
            self.at += 2
            if self._word() and self.words.has("number_and", self._word()):
                more = self._number(1)
                if more is not None and self._unit(2) in _SECONDS:
                    self.at += 1
        self._put_loose_words()
        self._time(Time(seconds, "seconds" if finest == "second" and seconds < 60 else "words", self.ears.total_said))

    def _time(self, time: Time) -> None:
        current = self.ears.current
        claim = self.ears.session() if current is None or time.total else current
        claim.times.append(time)
        self.ears.total_said = False

    def _bare(self, token: Token) -> None:
        claim = self._claim_here()
        claim.numbers.append(_as_number(token))
        self.at += 1

    def _claim_here(self) -> _Open:
        """The claim that a number belongs to.  Unknown words at the start of a
        sentence or after a comma, straight before the number, name it."""
        naming = [token for token in self.loose if not self.words.has("filler", token.text)]
        if naming and self._after_edge(naming[0]) and self._leads_here():
            name = self.text[naming[0].start : naming[-1].end]
            self.loose.clear()
            return self.ears.open(name=name)
        self._put_loose_words()
        return self.ears.current if self.ears.current is not None else self.ears.open()

    def _leads_here(self) -> bool:
        """Whether the loose words run up to this number with nothing between."""
        first = next(i for i, other in enumerate(self.tokens) if other.start == self.loose[0].start)
        return all(token.kind == "word" or token.text == ":" for token in self.tokens[first : self.at])

    # --- words -----------------------------------------------------------------

    def _hear_word(self, token: Token) -> None:
        if self.words.has("effort", token.text) and self._effort():
            return
        if self._run("same"):
            self._same()
            return
        if used := self._day():
            self.at += used
            return
        if used := self._run("skip"):
            current = self.ears.current
            if current is not None and current.named and not current.has_data:
                current.skipped = True
            else:
                self.ears.skip_next = True
            self.at += used
            return
        if self._last_one():
            return
        side = self.words.side(token.text)
        if side is not None or self.words.has("cuff", token.text):
            self._side(side, side is None)
            self.at += 1
            return
        if self.words.has("total", token.text):
            self.ears.total_said = True
            self.loose.append(token)
            self.at += 1
            return
        self.loose.append(token)
        self.at += 1

    def _effort(self) -> bool:
        ahead = 1
        while self._sign(ahead) in (":", "=", "-") or (
            self._word(ahead) and self.words.has("filler", self._word(ahead)) and not self._number(ahead)
        ):
            ahead += 1
        number = self._number(ahead)
        if number is None:
            return False
        self._put_loose_words()
        self.ears.efforts.append((self.text[self.tokens[self.at].start : number.end], number.value))
        self.at += ahead + 1
        for lead in (1, 2):
            small = all(self._sign(n) == "/" or self._word(n) for n in range(lead))
            if small and self._is_ten(lead) and (self._sign() == "/" or self._word() in ("of", "out", "sur")):
                self.at += lead + 1
                break
        return True

    def _side(self, side: Side | None, on_cuff: bool) -> None:
        current = self.ears.current
        if current is None:
            self.loose.append(self.tokens[self.at])
            return
        # A side after the numbers begins the next side's own numbers.
        counted = bool(current.numbers)
        if (current.side is None and not current.on_cuff and not counted) or (
            current.side in (None, side) and on_cuff != current.on_cuff and not counted
        ):
            current.side = side or current.side
            current.on_cuff = current.on_cuff or on_cuff
        elif current.side is None and not current.on_cuff and not on_cuff:
            current.side = side
        else:
            self.ears.open(name=current.name, number=current.number, id=current.id, side=side, on_cuff=on_cuff)

    def _same(self) -> None:
        self._put_loose_words()
        self.at += self._run("same")
        if self._word() and self.words.has("same_as", self._word()):
            self.at += 1
        day = self._named_day()
        self.at += day[1] if day else self._run("last_time")
        current = self.ears.current
        claim = current if current is not None and current.named and not current.has_data else self.ears.open()
        claim.same = Same(day[0] if day else None)

    def _last_one(self) -> bool:
        """ "last one eight", after "same as Saturday"."""
        used = self._run("last_one")
        claim = self.ears.current
        if not used or claim is None or claim.same is None:
            return False
        number = self._number(used)
        if number is not None and not number.digits and number.value == 1 and self._number(used + 1) is not None:
            used += 1  # "last one eight"
            number = self._number(used)
        if number is None or not _whole(number):
            return False
        claim.same = replace(claim.same, last=int(number.value))
        self.at += used + 1
        return True

    def _named_day(self) -> tuple[int | datetime.date, int] | None:
        """A day from here: (weekday or date, tokens used)."""
        token = self._peek()
        if token is not None and token.kind == "date" and token.date is not None:
            return token.date, 1
        word = self._word()
        for key in ("weekdays", "weekdays_short"):
            if word and (index := self.words.index(key, word)) is not None:
                return index, 1
        for key, back in (("today", 0), ("yesterday", 1)):
            if used := self._run(key):
                return self.ears.today - datetime.timedelta(days=back), used
        return self._spelled_date()

    def _spelled_date(self) -> tuple[datetime.date, int] | None:
        """ "9 January" or "January 9": the last such day that is not after today."""
        for number_at, month_at in ((0, 1), (1, 0)):
            number, word = self._number(number_at), self._word(month_at)
            if number is None or not word or not _whole(number):
                continue
            month = self.words.index("months", word)
            month = self.words.index("months_short", word) if month is None else month
            if month is not None:
                for year in (self.ears.today.year, self.ears.today.year - 1):
                    try:
                        date = datetime.date(year, month + 1, int(number.value))
                    except (ValueError, OverflowError):
                        continue
                    if date <= self.ears.today:
                        return date, 2
        return None

    def _day(self) -> int:
        """A day that dates the message; the number of tokens used."""
        # "like Saturday" takes that day's log, it does not date this one.
        if self._word() and self.words.has("same_as", self._word()) and self._word(1):
            self.at += 1
            day = self._named_day()
            self.at -= 1
            if day is not None and not isinstance(day[0], datetime.date):
                self._put_loose_words()
                claim = self.ears.current if self.ears.current and not self.ears.current.has_data else self.ears.open()
                claim.same = Same(day[0])
                return day[1] + 1
        day = self._named_day()
        if day is None:
            return 0
        said, used = day
        if isinstance(said, int):
            said = self.ears.today - datetime.timedelta(days=(self.ears.today.weekday() - said) % 7)
        first, last = self.tokens[self.at], self.tokens[self.at + used - 1]
        self.ears.dates.append((self.text[first.start : last.end], said))
        return used

    def _put_loose_words(self) -> None:
        """Words that say nothing of numbers are a note, in the client's words."""
        if any(not self.words.has("filler", token.text) for token in self.loose):
            said = self.text[_from(self.text, self.loose[0].start) : self.loose[-1].end]
            only_total = all(
                self.words.has("filler", token.text) or self.words.has("total", token.text) for token in self.loose
            )
            if not only_total:
                claim = self.ears.current
                if claim is None:
                    self.ears.notes.append(said)
                else:
                    claim.words.append(said)
        self.loose.clear()


def _from(text: str, start: int) -> int:
    """Where a word begins, with the article that leans on it: "l'épaule"."""
    found = _LEANING.search(text, max(0, start - 2), start)
    return found.start() if found else start


def _whole(token: Token) -> bool:
    return token.value == token.value.to_integral_value() and token.value >= 0


def _small(token: Token) -> int:
    """A count of sets or weights; 99 stands for "too many to be one"."""
    return min(int(token.value), 99) if token.value >= 0 else 99


def _as_number(token: Token) -> Number:
    return Number(token.value, token.split)


def _clock(text: str) -> int | None:
    """24:30 is minutes and seconds, 1:05:00 hours, minutes and seconds; None
    where seconds, or minutes beside hours, count past 59, as in 25:99."""
    pieces = [int(piece) for piece in text.split(":")]
    if max(pieces[1:]) > 59:
        return None
    if len(pieces) == 2:
        return pieces[0] * 60 + pieces[1]
    return pieces[0] * 3600 + pieces[1] * 60 + pieces[2]
