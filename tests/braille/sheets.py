"""One hand-made handout that has every kind of block."""

from __future__ import annotations

from handouts.handout import (
    Caution,
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


def line(words: str) -> Line:
    return (Text(words),)


def exercise(number: int) -> Section:
    return Section(
        "exercise",
        Heading(2, line(f"Exercise {number}: Goblet squat"), f"exercise-{number}"),
        (
            Dose((Text("3 sets of "), Measure("8–12", "8 to 12"), Text(", 16 kg in both hands"))),
            Heading(3, line("Start position"), f"start-{number}"),
            Steps(
                (
                    Item(
                        line("Stand with both feet as far apart as your hips."),
                        (Points((Item(line("Left toes at 11 o'clock, right toes at 1 o'clock.")),)),),
                    ),
                    Item(line("Hold one dumbbell upright, both palms under its upper end, against your breastbone.")),
                    Item(line("Breathe in.")),
                )
            ),
            Heading(3, line("Movement"), f"movement-{number}"),
            Steps(
                (
                    Item(line("Bend both hips and both knees until both thighs are as level as a chair's seat.")),
                    Item(
                        (
                            Text("Push the floor away and stand up. "),
                            Strong(line("Breathe out on the way up")),
                            Text("."),
                        )
                    ),
                )
            ),
        ),
    )


SHEET = Handout(
    sheet="sheet",
    language="en",
    title=line("Strength in pairs, weeks one and two"),
    client="Tomasz",
    client_code="C2",
    plan_code="P2",
    version=2,
    running_head="Tomasz, C2: P2 version 2",
    date="2029-01-07",
    review_by="2029-02-18",
    blocks=(
        Caution(
            line("When to stop"),
            (
                Paragraph((Text("Stop at once "), Strong(line("if you notice one of these")), Text(":"))),
                Points((Item(line("chest pain")), Item(line("sudden weakness")), Item(line("new flashes in an eye")))),
                Paragraph(line("Call for help. Emergency number: 112.")),
            ),
        ),
        Facts((Fact(line("Client"), line("Tomasz (C2)")), Fact(line("Phone"), line("555 0142")))),
        Section(
            "overview",
            Heading(2, line("The session at a glance"), "overview"),
            (
                Paragraph((Text("Three rounds, then "), Foreign("fr", line("étirement")), Text("."))),
                Table(
                    line("Weights"),
                    (line("Exercise"), line("Left"), line("Right")),
                    (
                        (line("Squat"), line("16 kg"), line("16 kg")),
                        (line("Press"), line("12 kg"), line("12.5 kg")),
                    ),
                ),
            ),
        ),
        exercise(1),
        exercise(2),
        exercise(3),
        Section(
            "log",
            Heading(2, line("Log sheet"), "log"),
            (
                Paragraph(line("Write one short line for each exercise.")),
                LogSheet(
                    (
                        LogEntry(
                            "goblet-squat",
                            1,
                            line("1 Goblet squat"),
                            (
                                LogField("weight", line("Weight"), "weight", "kg", (Measure("16 kg", "16 kilograms"),)),
                                LogField("reps", line("Repetitions in each set"), "count", "reps"),
                            ),
                        ),
                        LogEntry(
                            "session",
                            0,
                            line("The whole session"),
                            (
                                LogField("date", line("Date"), "words"),
                                LogField("pain", line("Pain: no, or where it hurt and when"), "words"),
                            ),
                        ),
                    )
                ),
            ),
        ),
    ),
)
