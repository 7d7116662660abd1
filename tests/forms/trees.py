"""Handout trees for the tests of the forms: a usual session, and awkward ones.

They are built by hand, not by fitting, so that a form can be tested on what
no plan would ever ask for.
"""

from __future__ import annotations

import re
from decimal import Decimal
from pathlib import Path

from handouts.handout import (
    Bar,
    Block,
    Caution,
    Chart,
    Dose,
    Fact,
    Facts,
    Foreign,
    Handout,
    Heading,
    Item,
    Line,
    LogEntry,
    LogField,
    LogSheet,
    Measure,
    Paragraph,
    Points,
    Section,
    Steps,
    Strong,
    Table,
    Text,
)

TEXTS = Path(__file__).parents[2] / "exercise_texts"


def words(text: str) -> Line:
    """A line in which **words** are strong."""
    pieces = re.split(r"\*\*(.+?)\*\*", text)
    return tuple(Strong((Text(p),)) if i % 2 else Text(p) for i, p in enumerate(pieces) if p)


def _said(text: str, language: str) -> Line:
    return (Foreign(language, words(text)),) if language else words(text)


def text_blocks(name: str, anchor: str, language: str = "", parts: int = 99) -> list[Block]:
    """The parts of a starter text as blocks; `language` wraps each line as foreign."""
    blocks: list[Block] = []
    steps: list[Item] = []
    points: list[Item] = []

    def close() -> None:
        if steps:
            blocks.append(Steps(tuple(steps)))
        if points:
            blocks.append(Points(tuple(points)))
        steps.clear()
        points.clear()

    body = (TEXTS / name).read_text("utf-8").split("---\n", 2)[2]
    for row in body.splitlines():
        if row.startswith("## "):
            close()
            parts -= 1
            if parts < 0:
                return blocks
            slug = re.sub(r"[^a-z]+", "-", row[3:].lower().replace("é", "e")).strip("-")
            blocks.append(Heading(3, words(row[3:]), f"{anchor}-{slug}"))
        elif found := re.match(r"\d+\. (.*)", row):
            steps.append(Item(_said(found[1], language)))
        elif row.startswith("- "):
            points.append(Item(_said(row[2:], language)))
        elif row.strip():
            close()
            blocks.append(Paragraph(_said(row, language)))
    close()
    return blocks


LB15 = Measure("15 lb", "15 pounds")
KG12 = Measure("12.5 kg", "12.5 kilograms")
TEN = Measure("10–12", "10 to 12")
TIME = Measure("43 min", "43 minutes")


def stop() -> Caution:
    return Caution(
        words("When to stop"),
        (
            Paragraph(words("**Stop at once** if you notice one of these:")),
            Points(
                tuple(
                    Item(words(sign))
                    for sign in (
                        "chest pain, or pressure in your chest",
                        "faintness, or being short of breath in a way that is new to you",
                        "sharp pain, or pain that spreads",
                        "sudden weakness, or trouble with speaking",
                        "in your eyes: new flashes, floaters, a curtain or a shadow, pain, or a sudden loss of sight that you had",
                    )
                )
            ),
            Paragraph(words("Put the weights down, sit or lie down, and call for help. Emergency number: 112.")),
            Paragraph(
                words(
                    "This sheet is training guidance. It does not replace advice from your doctor or physiotherapist. "
                    "Ask your doctor, eye specialist or another licensed professional before you start."
                )
            ),
        ),
    )


def facts() -> Facts:
    return Facts(
        (
            Fact(words("Client"), words("Noor (C1)")),
            Fact(words("Session"), words("P1, version 2")),
            Fact(words("Date of this sheet"), words("8 January 2029")),
            Fact(words("Review by"), words("19 February 2029")),
            Fact(words("Coach"), words("Ilse")),
            Fact(words("Time"), (Text("about "), TIME)),
        )
    )


def exercise(number: int, count: int, title: str, file: str, dose: Line, caution: bool = False) -> Section:
    anchor = f"exercise-{number}"
    blocks: list[Block] = [
        Dose(dose),
        Paragraph(
            (
                Text("Circuit, exercises 1 to 4, 3 rounds. Rest "),
                Measure("30 s", "30 seconds"),
                Text(" between exercises; change kit in that time. Rest "),
                Measure("90 s", "90 seconds"),
                Text(" between rounds."),
            )
        ),
    ]
    if caution:
        blocks.append(Caution(words("Caution"), (Paragraph(words("Keep your head higher than your heart in this exercise.")),)))
    blocks += text_blocks(file, anchor)
    return Section("exercise", Heading(2, words(f"Exercise {number} of {count}: {title}"), anchor), tuple(blocks))


def log_sheet() -> LogSheet:
    def reps(side: str = "") -> LogField:
        name = f"reps_{side}" if side else "reps"
        label = f"Repetitions in each set, {side}" if side else "Repetitions in each set"
        return LogField(name, words(label), "count", "reps", (TEN,))

    weight = LogField("weight", words("Weight"), "weight", "lb", (LB15,))
    return LogSheet(
        (
            LogEntry("goblet-squat", 1, words("1 Goblet squat: to chair height"), (weight, reps())),
            LogEntry("one-arm-supported-row", 2, words("2 One-arm supported row"), (weight, reps("right"), reps("left"))),
            LogEntry(
                "floor-press",
                3,
                words("3 Floor press"),
                (
                    LogField("weight_right", words("Weight, right"), "weight", "kg", (KG12,)),
                    LogField("weight_left", words("Weight, left"), "weight", "kg", (KG12,)),
                    reps("right"),
                    reps("left"),
                ),
            ),
            LogEntry("band-pull-apart", 4, words("4 Band pull-apart"), (reps(),)),
            LogEntry(
                "session",
                0,
                words("The whole session"),
                (
                    LogField("date", words("Date"), "words"),
                    LogField("time", words("Total time"), "time", "min"),
                    LogField("effort", words("How hard it felt, 0 to 10"), "scale"),
                    LogField("pain", words("Pain: no, or where"), "words"),
                    LogField("question", words("What you want to ask next time"), "words"),
                ),
            ),
        )
    )


def overview() -> Section:
    return Section(
        "overview",
        Heading(2, words("The session at a glance"), "overview"),
        (
            Heading(3, words("What changed since version 1"), "changed"),
            Points((Item((Text("Goblet squat: "), LB15, Text(" held in both hands, before "), Measure("12 lb", "12 pounds"), Text("."))),)),
            Heading(3, words("Through the whole session"), "throughout"),
            Points((Item(words("Keep your head higher than your heart, in every exercise and when you pick up a weight.")),)),
            Heading(3, words("Have ready"), "ready"),
            Points(
                (
                    Item(words("Clear floor: twice the span of your arms, no loose rugs, doors fully open or fully shut, shoes on.")),
                    Item((Text("One dumbbell of "), LB15)),
                )
            ),
            Heading(3, words("The order"), "order"),
            Paragraph((Text("Warm-up, "), Measure("6 min", "6 minutes"), Text(": Seated march"))),
            Steps(
                (
                    Item((Text("Goblet squat: "), TEN, Text(" repetitions, "), LB15, Text(" held in both hands"))),
                    Item((Text("One-arm supported row: "), TEN, Text(" repetitions on each side, "), LB15, Text(" in one hand"))),
                    Item(words("Floor press")),
                    Item(words("Band pull-apart")),
                )
            ),
        ),
    )


def handout(sheet: str, blocks: tuple[Block, ...], title: str = "Circuit at home", language: str = "en", **more: str) -> Handout:
    settings = {
        "client": "Noor",
        "client_code": "C1",
        "plan_code": "P1",
        "running_head": "Noor, C1: P1 version 2",
        "date": "2029-01-08",
        "review_by": "2029-02-19",
        **more,
    }
    return Handout(sheet=sheet, language=language, title=words(title), version=2, blocks=blocks, **settings)  # type: ignore[arg-type]


def usual() -> Handout:
    """A full sheet: facts, when to stop, overview, three exercises, log."""
    dose: Line = (TEN, Text(" repetitions, "), LB15, Text(" held in both hands"))
    each: Line = (TEN, Text(" repetitions on each side, "), LB15, Text(" in one hand"))
    log = Section(
        "log",
        Heading(2, words("Log sheet: Circuit at home"), "log"),
        (
            Paragraph(words("One short line for each exercise is enough. What you did not count stays empty.")),
            Paragraph(words("This log belongs to P1 version 2.")),
            log_sheet(),
        ),
    )
    return handout(
        "sheet",
        (
            facts(),
            stop(),
            overview(),
            exercise(1, 3, "Goblet squat: to chair height", "goblet-squat.md", dose),
            exercise(2, 3, "One-arm supported row", "one-arm-supported-row.md", each, caution=True),
            exercise(3, 3, "Band pull-apart", "band-pull-apart.md", (TEN, Text(" repetitions"))),
            log,
        ),
    )


def log_alone() -> Handout:
    return handout(
        "log",
        (facts(), Paragraph(words("**Stop** at chest pain, faintness, sharp pain. Emergency number: 112.")), log_sheet()),
        title="Log sheet: Circuit at home",
    )


def long_table(rows: int = 60) -> Handout:
    """A data table that runs over five pages or more."""
    table = Table(
        words("Every session of the season"),
        (words("Session"), words("Weight"), words("Repetitions")),
        tuple((words(f"Session {n}"), (KG12,), words(f"{8 + n % 5}, {9 + n % 4}, {10 + n % 3}")) for n in range(1, rows + 1)),
    )
    return handout("sheet", (Section("notes", Heading(2, words("The season"), "season"), (Paragraph(words("All of it.")), table)),))


def nested_lists(outer: int = 14) -> Handout:
    """Lists within lists, long enough that each level crosses a page edge."""
    spelled = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen"]

    def inner(step: str) -> Points:
        steps = Steps((Item(words("First inner step.")), Item(words("Second inner step, **with care**, and on."))))
        text = "{step}, point {n}, with words enough to fill more than one line of large print."
        return Points(tuple(Item(words(text.format(step=step.capitalize(), n=n)), (steps,) if n == 2 else ()) for n in range(1, 5)))

    steps = Steps(
        tuple(Item(words(f"Outer step {step}."), (inner(step), Paragraph(words("After the points.")))) for step in spelled[:outer]), 3
    )
    return handout("sheet", (Section("notes", Heading(2, words("Lists"), "lists"), (steps,)),))


def two_languages() -> Handout:
    """An English sheet with an exercise whose text is French, and the other way round inside."""
    french = Section(
        "exercise",
        Heading(2, (Text("Exercise 1 of 1: "), Foreign("fr", words("Squat gobelet"))), "exercise-1"),
        (Dose((TEN, Text(" repetitions"))), *text_blocks("goblet-squat.fr.md", "exercise-1", "fr")),
    )
    mixed = Paragraph((Text("The word "), Foreign("de", (Text("Kniebeuge "), Strong(words("tief")))), Text(" means a deep squat.")))
    return handout("sheet", (Section("notes", Heading(2, words("Notes"), "notes"), (mixed,)), french))


LONG = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft"


def long_words() -> Handout:
    """Words that no line of large print can hold, in every kind of block."""
    log = LogSheet((LogEntry("x", 1, words(f"1 {LONG}"), (LogField("weight", words(LONG), "weight", "lb", (LB15,)), LogField("reps", words(LONG), "count", "reps"))),))
    return handout(
        "sheet",
        (
            facts(),
            Caution(words(LONG), (Paragraph(words(f"{LONG} and more")), Points((Item(words(LONG), (Points((Item(words(LONG)),)),)),)))),
            Section(
                "exercise",
                Heading(2, words(f"Exercise 1 of 1: {LONG}"), "exercise-1"),
                (
                    Dose(words(LONG)),
                    Heading(3, words(LONG), "a"),
                    Heading(4, words(LONG), "b"),
                    Steps((Item(words(LONG)),), 98),
                    Facts((Fact(words(LONG), words(LONG)),)),
                    Table(words(LONG), (words(LONG), words("B"), words("C")), ((words("Row"), words(LONG), words("c")),)),
                ),
            ),
            Section("log", Heading(2, words("Log"), "log"), (log,)),
        ),
        title=LONG,
        client=LONG,
        running_head=f"{LONG}, C1: P1 version 2",
    )


def chart() -> Handout:
    """A drawing between paragraphs, whose words stand above it."""
    bars = tuple(Bar(words(f"Week {n}"), Decimal(100 + 40 * n), (Measure(f"{100 + 40 * n} kg", f"{100 + 40 * n} kilograms"),)) for n in range(1, 5))
    drawn = Chart(words("Weight lifted"), words("It rose from week to week."), bars)
    return handout(
        "sheet",
        (Section("notes", Heading(2, words("Your progress"), "progress"), (Paragraph(words("Before.")), drawn, Paragraph(words("After.")))),),
    )


def bonds() -> Handout:
    """Numbers with their words, compound words and French signs, at every place in a line."""
    said = (
        "Split squat, hand on wall: 8 repetitions on each side.",
        "Turn your left toes to 11 o'clock and your right toes to 1 o'clock, then your nose to 12 o'clock.",
        "Set your heels 15 centimetres apart, bend both knees 90 degrees, and count 3 breaths in all.",
        "Band pull-apart, with the band: one knot. A step-up needs a warm-up.",
    )
    french = (
        "Tournez le pied gauche vers 11 heures et le pied droit vers 3 heures : le nez reste \u00e0 12 heures.",
        "\u00ab Pliez les genoux \u00bb : 90 degr\u00e9s ! Comptez 3 souffles ; soufflez.",
    )
    start = ("", "Now. ", "Then go on. ", "In the same way ", "Take your time and ")
    blocks = [Paragraph((Text(before + text + " Rest "), Measure("30 s", "30 seconds"), Text(" after each set."))) for text in said for before in start]
    blocks += [Paragraph((Text(before), Foreign("fr", words(text)))) for text in french for before in start]
    dose: Line = (Measure("10", "10"), Text(" repetitions on each side, "), Measure("20 lb", "20 pounds"), Text(" held in both hands"))
    return handout("card", (Section("exercise", Heading(2, words("Exercise 1 of 1: Band pull-apart"), "exercise-1"), (Dose(dose), *blocks)),))


AWKWARD = {
    "bonds": bonds,
    "chart": chart,
    "long table": long_table,
    "nested lists": nested_lists,
    "two languages": two_languages,
    "long words": long_words,
    "usual": usual,
    "log alone": log_alone,
}
