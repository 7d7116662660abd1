"""The report of progress as a Handout tree: words first, then a table, then a chart."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Sequence
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_UP, Decimal
from fractions import Fraction

from handouts.amounts import Mass, MassUnit
from handouts.coaching.records import Trend, Volume
from handouts.coaching.strength import TRUSTED_REPS
from handouts.handout import Bar, Block, Chart, Fact, Facts, Handout, Heading, Line, Paragraph, Section, Table, Text
from handouts.languages import Phrases, phrases
from handouts.models import LogLine, StudioFacts
from handouts.progress.history import History
from handouts.progress.summary import Session, Strand, Summary

LATEST = 12
"""So many days stand in a table and a chart, the latest ones."""

_KINDS = ("volume", "density", "time")


def progress_report(
    history: History, summary: Summary, studio: StudioFacts, language: str = "", code: str = "", version: int = 0
) -> Handout:
    """The report for one client.

    language: "" for the client's own.  code, version: of the plan in use.
    """
    client = history.client.facts
    words = phrases(language or client.language)
    blocks: list[Block] = [
        Facts(
            (
                Fact(words.line("label_client"), words.line("value_client", name=client.name, code=client.code)),
                Fact(words.line("label_coach"), (Text(studio.coach),)),
            )
        ),
        Paragraph(words.line("not_medical")),
        _in_short(summary, words),
    ]
    for number, strand in enumerate(summary.strands, 1):
        blocks.append(_strand(history, strand, summary.unit, number, words))
    return Handout(
        sheet="progress",
        language=words.language,
        title=words.line("progress_title"),
        client=client.name,
        client_code=client.code,
        plan_code=code,
        version=version,
        running_head=words.text("progress_running", client=client.name, code=client.code),
        date=summary.kept.last.isoformat() if summary.kept else "",
        review_by="",
        blocks=tuple(blocks),
    )


# --- the whole ---------------------------------------------------------------------


def _in_short(summary: Summary, words: Phrases) -> Section:
    blocks: list[Block] = [Paragraph(line) for line in _kept(summary, words)]
    ways = {what: summary.trend_of(what) for what in _KINDS}
    told = [_way(what, values, way, summary.unit, words) for what, (values, way) in ways.items() if way]
    blocks += [Paragraph(line) for line in told or ((words.line("progress_too_few"),) if summary.sessions else ())]
    if summary.sessions:
        blocks.append(Paragraph(words.line("progress_unknown")))
        blocks.append(_sessions(summary.sessions[-LATEST:], len(summary.sessions), words))
        if any(session.volume for session in summary.sessions):
            blocks.append(Paragraph(words.line("progress_how")))
    for what, (values, _) in ways.items():
        if len(values) > 1:
            blocks.append(_chart(what, values, summary.unit, words))
    heading = Heading(2, words.line("progress_short"), "in-short")
    return Section("overview", heading, tuple(blocks))


def _kept(summary: Summary, words: Phrases) -> Iterator[Line]:
    kept = summary.kept
    if kept is None:
        yield words.line("progress_none")
        return
    first, last = words.date(kept.first.isoformat()), words.date(kept.last.isoformat())
    yield words.line("progress_kept", count=kept.sessions, first=first, last=last)
    if kept.sessions > 1:
        without = words.line("progress_weeks_without", count=kept.without) if kept.without else ()
        every = words.line("progress_weeks_all") if kept.weeks > 1 and not kept.without else ()
        space = (Text(" "),)
        yield (*words.line("progress_weeks", count=kept.weeks), *(space if without or every else ()), *without, *every)
        yield words.line("progress_gap", count=kept.longest_gap)


def _sessions(sessions: Sequence[Session], all_of_them: int, words: Phrases) -> Table:
    """Only columns in which something was told."""
    columns: list[tuple[Line, list[Line]]] = [
        (words.line("progress_day"), [(Text(words.date(session.day.isoformat())),) for session in sessions])
    ]
    open_ = words.line("progress_not_told")
    if any(session.volume for session in sessions):
        cells = [_volume(session.volume, words) if session.volume else open_ for session in sessions]
        columns.append((words.line("progress_moved"), cells))
    if any(session.seconds for session in sessions):
        cells = [_told("time", Fraction(session.seconds), "kg", words) if session.seconds else open_ for session in sessions]
        columns.append((words.line("progress_took"), cells))
    if any(session.density is not None for session in sessions):
        cells = [_density(session, words) if session.density is not None else open_ for session in sessions]
        columns.append((words.line("progress_a_minute"), cells))
    if any(session.effort is not None for session in sessions):
        cells = [(Text(str(session.effort)),) if session.effort is not None else open_ for session in sessions]
        columns.append((words.line("progress_effort"), cells))
    heads = tuple(head for head, _ in columns)
    rows = tuple(zip(*(cells for _, cells in columns), strict=True))
    return Table(_caption(len(sessions), all_of_them, words), heads, rows)


def _caption(shown: int, all_of_them: int, words: Phrases) -> Line:
    return words.line("progress_sessions") if shown == all_of_them else words.line("progress_latest", count=shown)


def _volume(volume: Volume, words: Phrases) -> Line:
    amount = _told("volume", volume.amount, volume.unit, words)
    return amount if volume.whole else words.line("progress_at_least", amount=amount)


def _density(session: Session, words: Phrases) -> Line:
    assert session.density is not None and session.volume is not None
    amount = _told("density", session.density, session.volume.unit, words)
    return amount if session.volume.whole else words.line("progress_at_least", amount=amount)


# --- one exercise --------------------------------------------------------------------


def _strand(history: History, strand: Strand, unit: MassUnit, number: int, words: Phrases) -> Section:
    blocks: list[Block] = []
    if strand.best is not None:
        best = strand.best
        reps = words.line("dose_reps", count=best.reps, reps=str(best.reps))
        line = words.line("progress_best", mass=words.mass(best.load), reps=reps, day=words.date(best.day.isoformat()))
        blocks.append(Paragraph(line))
    if strand.estimate is not None:
        blocks.append(Paragraph(_estimate(strand, unit, words)))
    what = strand.shows
    if strand.trend:
        blocks.append(Paragraph(_way(what, strand.values, strand.trend, unit, words)))
    lines = strand.lines[-LATEST:]
    blocks.append(_lines(lines, len(strand.lines), words))
    if len(strand.values) > 1:
        blocks.append(_chart(what, strand.values, unit, words))
    return Section("notes", Heading(2, _title(history, strand, words), f"exercise-{number}-progress"), tuple(blocks))


def _title(history: History, strand: Strand, words: Phrases) -> Line:
    text = history.exercises.get((strand.exercise, words.language)) or history.exercises.get((strand.exercise, "en"))
    title = text.facts.title if text else strand.exercise
    return words.line("progress_side", title=title, side=words.text(strand.side)) if strand.side else (Text(title),)


def _estimate(strand: Strand, unit: MassUnit, words: Phrases) -> Line:
    assert strand.estimate is not None
    one, estimate = strand.estimate
    tenth = Decimal("0.1")
    line = words.line(
        "progress_estimate_reserve" if one.in_reserve else "progress_estimate",
        left=words.number(Decimal(one.in_reserve)),
        all=words.number(Decimal(one.to_failure)),
        reps=words.line("dose_reps", count=one.reps, reps=str(one.reps)),
        mass=words.mass(one.load),
        day=words.date(one.day.isoformat()),
        low=words.mass(Mass(estimate.low.quantize(tenth, ROUND_FLOOR), unit)),
        high=words.mass(Mass(estimate.high.quantize(tenth, ROUND_CEILING), unit)),
    )
    return (*line, Text(" "), *words.line("progress_estimate_long")) if one.to_failure > TRUSTED_REPS else line


def _lines(lines: Sequence[LogLine], all_of_them: int, words: Phrases) -> Table:
    open_ = words.line("progress_not_told")
    columns: list[tuple[Line, list[Line]]] = [
        (words.line("progress_day"), [(Text(words.date(line.date.isoformat() if line.date else "")),) for line in lines])
    ]
    if any(line.weight for line in lines):
        cells: list[Line] = [(words.mass(line.weight),) if line.weight else open_ for line in lines]
        columns.append((words.line("progress_weight"), cells))
    if any(line.reps for line in lines):
        cells = [(Text(", ".join(map(str, line.reps))),) if line.reps else open_ for line in lines]
        columns.append((words.line("progress_reps"), cells))
    if any(line.metres for line in lines):
        cells = [(Text(str(line.metres)),) if line.metres else open_ for line in lines]
        columns.append((words.line("progress_metres"), cells))
    if any(line.seconds for line in lines):
        cells = [(words.seconds(line.seconds),) if line.seconds else open_ for line in lines]
        columns.append((words.line("progress_took"), cells))
    heads = tuple(head for head, _ in columns)
    rows = tuple(zip(*(cells for _, cells in columns), strict=True))
    return Table(_caption(len(lines), all_of_them, words), heads, rows)


# --- values in words and bars -----------------------------------------------------------


def _way(
    what: str, values: Sequence[tuple[datetime.date, Fraction]], way: Trend, unit: MassUnit, words: Phrases
) -> Line:
    name = words.text(f"progress_{what}")
    first, last = (_told(what, values[at][1], unit, words) for at in (0, -1))
    return words.line(f"progress_{way.way}", what=name, first=first, last=last)


def _chart(what: str, values: Sequence[tuple[datetime.date, Fraction]], unit: MassUnit, words: Phrases) -> Chart:
    shown = values[-LATEST:]
    first, last = (_told(what, shown[at][1], unit, words) for at in (0, -1))
    most = _told(what, max(value for _, value in shown), unit, words)
    bars = tuple(
        Bar((Text(words.date(day.isoformat())),), _decimal(what, value), _told(what, value, unit, words))
        for day, value in shown
    )
    told = words.line("progress_chart", first=first, last=last, most=most)
    return Chart(words.line(f"progress_{what}"), told, bars)


def _decimal(what: str, value: Fraction) -> Decimal:
    """Rounded as it is told: whole pounds or kilograms of a sum, else tenths."""
    places = Decimal(1) if what in ("volume", "time", "last_set", "walked", "held") else Decimal("0.1")
    return (Decimal(value.numerator) / value.denominator).quantize(places, ROUND_HALF_UP)


def _told(what: str, value: Fraction, unit: MassUnit, words: Phrases) -> Line:
    if what in ("time", "held"):
        return (words.seconds(round(value)),)
    if what == "walked":
        return (words.metres(int(value)),)
    if what == "last_set":
        return words.line("dose_reps", count=int(value), reps=str(int(value)))
    return (words.mass(Mass(_decimal(what, value), unit)),)
