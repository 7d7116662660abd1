"""Filled-in fields to claims: from the page's form, the terminal, options, CSV.

Each field says what it is, so only its own kind of words is read from it; what
cannot be read becomes something to ask about, never something left out.
"""

from __future__ import annotations

import datetime
from collections.abc import Iterator
from dataclasses import replace

from handouts.logbook.hearing import hear
from handouts.logbook.message import SESSION, Asked, Claim, Filled, Heard, Number, Time, Warning, Weight
from handouts.logbook.names import Names
from handouts.logbook.tokens import cut, with_numbers
from handouts.logbook.words import Words, folded
from handouts.models import Side
from handouts.reading.log import note_of_sets


def read_fields(fields: tuple[Filled, ...], names: Names, today: datetime.date) -> Heard:
    """What the fields say.  An empty field says nothing."""
    claims: dict[tuple[str, Side | None], Claim] = {}
    heard = Heard()
    for field in fields:
        text = field.text.strip()
        if not text:
            continue
        kind, _, tail = field.name.partition("_")
        side: Side | None = "left" if tail == "left" else "right" if tail == "right" else None
        place = (field.exercise, side)
        claim = claims.get(place, _claim(field.exercise, side, names))
        if kind == "question":
            heard = heard.with_more(Heard(asked=(Asked(text, claim.id or claim.name or str(claim.number), tail),)))
            continue
        more = _read(kind, text, claim, names, today)
        if isinstance(more, Claim):
            claims[place] = more
        elif more is None:
            heard = replace(heard, unread=(*heard.unread, f"{field.exercise} {field.name}: {text[:60]}"))
        else:
            heard = heard.with_more(more)
    return replace(heard, claims=(*_lent(claims), *heard.claims))


def _lent(claims: dict[tuple[str, Side | None], Claim]) -> Iterator[Claim]:
    """The claims; one weight for an exercise whose sides are counted each
    stands for both sides."""
    for (exercise, side), claim in claims.items():
        both = claims.get((exercise, None))
        if side is not None and both is not None and not claim.weights:
            claim = replace(claim, weights=both.weights)
        sided = any(other == exercise and one is not None for other, one in claims)
        bare = replace(claim, weights=())
        if side is None and sided and bare == _claim_like(claim):
            continue
        yield claim


def _claim_like(claim: Claim) -> Claim:
    """A claim on the same exercise that says nothing."""
    return Claim(name=claim.name, number=claim.number, id=claim.id)


def _claim(exercise: str, side: Side | None, names: Names) -> Claim:
    """A claim on an exercise, given by its id, its number or its name."""
    if exercise == SESSION or exercise in names.by_id:
        return Claim(id=exercise, side=side)
    if exercise.isascii() and exercise.isdigit():
        return Claim(number=int(exercise[:6]), side=side)
    return Claim(name=exercise, side=side)


def _read(kind: str, text: str, claim: Claim, names: Names, today: datetime.date) -> Claim | Heard | None:
    """One field: its claim with the field in it, something of the session, or
    None where the text does not fit the field."""
    words = names.words
    if kind in ("weight", "reps", "seconds", "distance", "metres") and words.has("skip", folded(text)):
        return replace(claim, skipped=True)
    if kind == "weight":
        said = hear(f"#1 {text}", names, (), today).claims
        weights = said[0].weights if len(said) == 1 and not said[0].numbers else ()
        if len(said) == 1 and not said[0].weights and len(said[0].numbers) == 1:
            return replace(claim, weights=(Weight(said[0].numbers[0].value, None),))
        return replace(claim, weights=weights) if weights else None
    if kind == "reps":
        counts = _counts(text, words)
        return (
            None
            if counts is None
            else replace(claim, numbers=(*claim.numbers, *(replace(count, counted=True) for count in counts)))
        )
    if kind == "time":
        return _time(text, claim, names, today)
    if kind == "seconds":
        return _seconds(text, claim, words)
    if kind in ("distance", "metres"):
        counts = _counts(text.removesuffix("m"), words)
        if counts is None or any(count.split for count in counts):
            return None
        walked = [int(count.value) for count in counts]
        told = "; ".join(note for note in (claim.note, note_of_sets("metres", walked) if len(walked) > 1 else "") if note)
        return replace(claim, metres=sum(walked), note=told)
    if kind == "rounds":
        counts = _counts(text, words)
        return None if counts is None or len(counts) != 1 else replace(claim, rounds=int(counts[0].value))
    if kind == "note":
        return replace(claim, note="; ".join(note for note in (claim.note, text) if note))
    if kind == "effort":
        counts = _counts(text.removesuffix("/10"), words)
        return None if counts is None or len(counts) != 1 else Heard(efforts=((text, counts[0].value),))
    if kind == "date":
        dates = hear(text, names, (), today).dates
        return Heard(dates=dates if len(dates) == 1 else ((text[:40], None),))
    if kind in ("pain", "warning"):
        if words.has("none", folded(text)):
            return Heard()
        return Heard(
            warnings=(Warning(text, "" if claim.id == SESSION else claim.id or claim.name or str(claim.number)),)
        )
    return None


def _time(text: str, claim: Claim, names: Names, today: datetime.date) -> Claim | None:
    """A time with its unit; bare numbers are seconds a set in an exercise and
    minutes in the session, as the fields ask for them."""
    counts = _counts(text, names.words)
    if counts is not None:
        if claim.id != SESSION:
            return _seconds(text, claim, names.words)
        if len(counts) == 1:
            return replace(claim, times=(Time(int(counts[0].value * 60), total=True),))
        return None
    said = [time for heard in hear(text, names, (), today).claims for time in heard.times]
    if len(said) != 1:
        return None
    return replace(claim, times=(replace(said[0], total=claim.id == SESSION),))


def _seconds(text: str, claim: Claim, words: Words) -> Claim | None:
    """Seconds of each set of one exercise."""
    counts = _counts(text, words)
    if counts is None or any(count.split or count.value != int(count.value) for count in counts):
        return None
    return replace(claim, times=(*claim.times, *(Time(int(count.value), "seconds") for count in counts)))


def _counts(text: str, words: Words) -> tuple[Number, ...] | None:
    """Bare numbers with spaces, commas or strokes between; "3 x 12" too."""
    tokens = with_numbers(cut(text[:400], words), words)
    numbers: list[Number] = []
    sets = 0
    for token in tokens:
        if token.kind == "number":
            numbers.append(Number(token.value, token.split, sets))
            sets = 0
        elif token.text in ("x", "*") and numbers and not numbers[-1].sets and numbers[-1].value > 0:
            sets = min(int(numbers.pop().value), 99)
        elif token.text not in (",", "/", ";", "\n"):
            return None
    return tuple(numbers) if numbers and not sets else None
