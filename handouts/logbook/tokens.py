"""A message cut into words, numbers and signs, each with its place."""

from __future__ import annotations

import datetime
import re
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Literal

from handouts.logbook.words import Words, folded

LONGEST = 4000
"""Characters of a message; a log of a whole session has a few hundred."""

_PIECE = re.compile(
    r"""(?P<half>½)
      | (?P<date>[0-9]{4}-[0-9]{2}-[0-9]{2}(?![0-9]))
      | (?P<unclear>0[0-9][-./][0-9]{1,2}(?:[-./][0-9]{2,4})?(?![0-9]))
      | (?P<clock>[0-9]{1,2}:[0-9]{2}(?::[0-9]{2})?(?![0-9]))
      | (?P<number>(?:(?<![\w)])[-\u2212])?[0-9]+(?:[.,][0-9]+(?![.,]?[0-9]))?)
      | (?P<elided>\b[cdjlmnst]['\u2019](?=\w))
      | (?P<word>[^\W\d_]+)
      | (?P<sign>[^\w\s]|\n)""",
    re.VERBOSE,
)
_MARKS = {"×": "x", "\u2212": "-"}


@dataclass(frozen=True)
class Token:
    """start, end: in the message.  text: folded, or the sign itself.

    glued: stands directly against the token before it.
    value: of a number.  split: see `message.Number`.  date: of a date.
    digits: whether a number was written in digits.
    """

    kind: Literal["word", "number", "clock", "date", "unclear", "sign"]
    text: str
    start: int
    end: int
    glued: bool = False
    value: Decimal = Decimal(0)
    split: tuple[Decimal, ...] = ()
    date: datetime.date | None = None
    digits: bool = False


def cut(text: str, words: Words) -> list[Token]:
    """The tokens of a text, number words still as words."""
    tokens: list[Token] = []
    last = -1
    for found in _PIECE.finditer(text):
        kind = str(found.lastgroup)
        piece, start, end = found[0], found.start(), found.end()
        glued = start == last
        last = end
        if kind == "elided":
            last = -1
            continue
        if kind == "number":
            tokens += _numbers(piece, start, glued, text, words)
        elif kind == "date":
            tokens.append(Token("date", piece, start, end, glued, date=_date(piece)))
        elif kind == "half":
            tokens.append(Token("sign", "½", start, end, glued))
        elif kind == "sign":
            # A hyphen or an apostrophe within a word joins its halves.
            inside = piece in "-'\u2019\u2010" and glued and text[end : end + 1].isalpha()
            if inside and tokens and tokens[-1].kind == "word":
                last = end
                continue
            tokens.append(Token("sign", _MARKS.get(piece, piece), start, end, glued))
        elif kind == "word":
            tokens.append(Token("word", folded(piece), start, end, glued))
        else:
            tokens.append(Token(kind, piece, start, end, glued))  # type: ignore[arg-type]
    return tokens


def _date(text: str) -> datetime.date | None:
    try:
        return datetime.date.fromisoformat(text)
    except ValueError:
        return None


def _numbers(piece: str, start: int, glued: bool, text: str, words: Words) -> list[Token]:
    """One number, or two where a comma divides a list: "12,11"."""
    end = start + len(piece)
    plain = piece.replace("\u2212", "-")
    if "," not in plain:
        return [_number(plain, start, end, glued)]
    whole, _, part = plain.partition(",")
    after = re.match(r"\s*([^\W\d_]+)", text[end:])
    unit = words.unit(folded(after[1])) if after else None
    if unit in ("kg", "lb"):
        return [_number(f"{whole}.{part}", start, end, glued)]
    if part in ("5", "25", "75") and words.language == "fr":
        token = _number(f"{whole}.{part}", start, end, glued)
        return [replace(token, split=(Decimal(whole[:9]), Decimal(part)))]
    middle = start + len(whole)
    return [
        _number(whole, start, middle, glued),
        Token("sign", ",", middle, middle + 1, True),
        _number(part, middle + 1, end, True),
    ]


def _number(plain: str, start: int, end: int, glued: bool) -> Token:
    """Digits beyond nine are no amount of anything here, only "too many"."""
    sign = "-" if plain.startswith("-") else ""
    whole, _, part = plain.removeprefix("-").partition(".")
    digits = f"{sign}{whole[:9]}" + (f".{part[:3]}" if part else "")
    return Token("number", plain, start, end, glued, Decimal(digits), digits=True)


# --- number words --------------------------------------------------------------


def with_numbers(tokens: list[Token], words: Words) -> list[Token]:
    """The same tokens with runs of number words made numbers.

    "vingt-deux et demi" becomes 22.5.  A compound that is written apart, such
    as "twenty five", keeps the other reading in `split`.
    """
    result: list[Token] = []
    at = 0
    while at < len(tokens):
        token = tokens[at]
        value = words.number(token.text) if token.kind == "word" else None
        if token.kind == "number" and token.value == token.value.to_integral_value():
            token, at = _with_fraction(token, tokens, at + 1, words)
            result.append(token)
        elif value is None:
            result.append(token)
            at += 1
        else:
            token, at = _spelled(tokens, at, value, words)
            token, at = _with_fraction(token, tokens, at, words)
            result.append(token)
    return result


def _spelled(tokens: list[Token], at: int, value: int, words: Words) -> tuple[Token, int]:
    first, at = tokens[at], at + 1
    split: tuple[Decimal, ...] = ()
    last = first
    while at < len(tokens):
        joined = tokens[at].kind == "word" and words.has("number_and", tokens[at].text)
        here = at + 1 if joined else at
        if here >= len(tokens) or tokens[here].kind != "word":
            break
        following = words.number(tokens[here].text)
        more = _joined(value, following, joined, words.language) if following is not None else None
        if more is None or following is None:
            break
        if not joined and not tokens[here].glued and following < 100 and value < 100 and more != 80:
            split = (Decimal(value), Decimal(following))
        value, last, at = more, tokens[here], here + 1
    return Token("number", first.text, first.start, last.end, first.glued, Decimal(value), split), at


def _joined(value: int, more: int, with_and: bool, language: str) -> int | None:
    """Two number words as one number, None where they are two numbers."""
    rest = value % 100
    if more == 100:
        return value * 100 if 1 <= value <= 9 else None
    if rest == 0 and value >= 100:
        return value + more if 1 <= more <= 99 else None
    if language == "fr":
        if with_and and more not in (1, 11):
            return None
        if rest == 4 and more == 20 and not with_and:
            return value - 4 + 80
        if rest in (60, 80) and 10 <= more <= 19:
            return value + more
        if rest == 10 and 7 <= more <= 9 and not with_and:
            return value + more
    elif with_and:
        return None
    return value + more if 20 <= rest <= 90 and rest % 10 == 0 and 1 <= more <= 9 else None


def _with_fraction(token: Token, tokens: list[Token], at: int, words: Words) -> tuple[Token, int]:
    """ "twelve point five", "twelve and a half", "douze et demi", "12 1/2", "12½"."""

    def text(index: int) -> str:
        return tokens[index].text if index < len(tokens) and tokens[index].kind in ("word", "sign") else ""

    if text(at) == "½":
        return replace(token, value=token.value + Decimal("0.5"), end=tokens[at].end), at + 1
    for lead in words.phrases("half_lead"):
        end = at + len(lead)
        if tuple(text(at + n) for n in range(len(lead))) == lead and words.has("half", text(end) or "-"):
            return replace(token, value=token.value + Decimal("0.5"), end=tokens[end].end, split=()), end + 1
    if words.has("point", text(at) or "-") and at + 1 < len(tokens):
        digits, here = "", at + 1
        while here < len(tokens) and tokens[here].kind == "word" and len(digits) < 3:
            digit = words.number(tokens[here].text)
            if digit is None or (digits and digit > 9):
                break
            digits, here = f"{digits}{digit}", here + 1
        if digits:
            value = token.value + Decimal(f"0.{digits[:3]}")
            return replace(token, value=value, end=tokens[here - 1].end, split=()), here
    return token, at
