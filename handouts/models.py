"""What a trainer's files say, as frozen models.  No input or output, no markup.

The field aliases (with spaces) are the keys of the files.  All scalars of a
file arrive as text, exactly as written, and are read strictly here; a
validator's ValueError reads "what is wrong; what to write instead".
"""

from __future__ import annotations

import datetime
from decimal import Decimal
from typing import Annotated, Generic, Literal, TypeAlias, TypeVar

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from handouts import amounts

# --- words that files may use ------------------------------------------------

Side: TypeAlias = Literal["left", "right"]
SidePattern: TypeAlias = Literal["together", "each", "alternating"]
Hands: TypeAlias = Literal["none", "one", "both on one", "one each"]
ClockFrame: TypeAlias = Literal["floor", "wall", "crown", "across"]
Position: TypeAlias = Literal[
    "standing", "leaning", "hinged", "seated", "kneeling", "lying on back", "lying on front",
    "lying on side", "walking",
]
Demand: TypeAlias = Literal[
    "head_below_heart", "breath_hold_risk", "jarring", "lying_back", "kneeling", "overhead",
    "balance", "grip_long", "deep_knee", "over_face",
]
KitName: TypeAlias = Literal[
    "dumbbell", "pair of dumbbells", "bench", "chair", "mat", "step", "rail", "wall", "band",
    "lane", "cushion", "towel",
]
PartName: TypeAlias = Literal[
    "Equipment", "Start position", "Movement", "Breathing", "Count", "Key points", "Easier",
    "Harder", "Finish",
]
Level: TypeAlias = Literal[1, 2, 3]


def _strict(reader, pattern_example: str):
    """A field that is text in the file and read by one of `amounts`' readers."""

    def read(value: object) -> object:
        return reader(value) if isinstance(value, str) else value

    return BeforeValidator(read), WithJsonSchema({"type": "string", "examples": [pattern_example]})


def _read_date(text: str) -> datetime.date:
    try:
        if len(text) != 10:
            raise ValueError
        return datetime.date.fromisoformat(text)
    except ValueError:
        raise ValueError(f"'{text}' is not a date; write year-month-day, such as '2029-01-08'") from None


def _read_truth(text: str) -> bool:
    if text not in ("yes", "no"):
        raise ValueError(f"'{text}' is neither yes nor no; write 'yes' or 'no'")
    return text == "yes"


Whole = Annotated[int, *_strict(amounts.read_whole_number, "3")]
Seconds = Annotated[int, *_strict(amounts.read_seconds, "90 s")]
Centimetres = Annotated[Decimal, *_strict(amounts.read_centimetres, "15 cm")]
Degrees = Annotated[int, *_strict(amounts.read_degrees, "90 degrees")]
Date = Annotated[datetime.date, *_strict(_read_date, "2029-01-08")]
YesNo = Annotated[bool, *_strict(_read_truth, "yes")]
LoadText = Annotated[amounts.AskedLoad, *_strict(amounts.read_load, "6 kg each")]
DoseText = Annotated[amounts.Dose, *_strict(amounts.read_dose, "8-12 reps each side")]
EffortText = Annotated[amounts.Effort, *_strict(amounts.read_effort, "2 in reserve")]
TempoText = Annotated[amounts.Tempo, *_strict(amounts.read_tempo, "3-1-2-0")]
MassText = Annotated[amounts.Mass, *_strict(amounts.read_mass, "12.5 kg")]
PiecesText = Annotated[amounts.Pieces, *_strict(amounts.read_pieces, "2 x 5 lb")]


class Model(BaseModel):
    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True, arbitrary_types_allowed=True)


# --- exercise texts ----------------------------------------------------------


class Option(Model):
    """An easier or harder way that changes what an exercise needs or demands.

    Its words are the list item of the same name under Easier or Harder.  A
    field that is None leaves the exercise's own value as it is.
    """

    title: str | None = None
    equipment: tuple[tuple[KitName, ...], ...] | None = None
    position: Position | None = None
    sides: SidePattern | None = None
    hands: Hands | None = None
    demands: tuple[Demand, ...] | None = None
    knee_bend: Degrees | None = Field(None, alias="knee bend")
    step_height: Centimetres | None = Field(None, alias="step height")


class Substitute(Model):
    """Another exercise, or an option of one, that serves the same end."""

    exercise: str
    option: str | None = None


class ExerciseFacts(Model):
    """The front matter of an exercise text.

    equipment: what is needed; each entry is one kit name, or alternatives
        joined by " or " in the file ("bench or chair").
    positions: the first is the usual one.
    written_for: the side that the text is written for; None when sides are
        "together" or when the text names no side.
    hands: how hands hold the weight: "one each" (a pair), "both on one",
        "one" (the working hand alone), "none".
    cuff: a weight cuff on a forearm can replace the grip.
    demands: what the movement asks of a body at its usual range.
    knee_bend: the deepest bend of a knee, degrees from straight.
    substitutes: in the order in which to try them.
    seconds_per_rep: at an easy, controlled pace (common practice: 4 s).
    picture: a likeness from sighted life, only for clients who like them.
    """

    title: str
    language: str = "en"
    equipment: tuple[tuple[KitName, ...], ...] = ()
    positions: tuple[Position, ...]
    sides: SidePattern
    written_for: Side | None = Field(None, alias="written for")
    hands: Hands = "none"
    cuff: YesNo = False
    clock: ClockFrame | None = None
    regions: tuple[str, ...]
    demands: tuple[Demand, ...] = ()
    knee_bend: Degrees | None = Field(None, alias="knee bend")
    step_height: Centimetres | None = Field(None, alias="step height")
    options: dict[str, Option] = {}
    substitutes: tuple[Substitute, ...] = ()
    seconds_per_rep: Seconds = Field(4, alias="seconds per rep")
    picture: str | None = None


class Paragraph(Model):
    text: str
    line: int


class ListItem(Model):
    text: str
    line: int
    items: tuple["ListItem", ...] = ()


class ItemList(Model):
    ordered: bool
    items: tuple[ListItem, ...]


TextBlock: TypeAlias = Paragraph | ItemList


class Part(Model):
    """One headed part of an exercise text.  Texts keep Markdown emphasis
    (**strong**) and nothing else of Markdown."""

    name: PartName
    blocks: tuple[TextBlock, ...]
    line: int


class Exercise(Model):
    """One exercise text in one language.

    id: the file's stem.  path: the file, relative to the studio (or to the
        starter library), for messages.  starter: True for the texts that come
        with the program.
    """

    id: str
    path: str
    starter: bool
    facts: ExerciseFacts
    parts: tuple[Part, ...]

    def part(self, name: PartName) -> Part | None:
        return next((part for part in self.parts if part.name == name), None)


# --- plans -------------------------------------------------------------------

T = TypeVar("T")


class ByLevel(Model, Generic[T]):
    """One value for each level; a file may give one value for all three."""

    level_1: T = Field(alias="level 1")
    level_2: T = Field(alias="level 2")
    level_3: T = Field(alias="level 3")

    def at(self, level: Level) -> T:
        return (self.level_1, self.level_2, self.level_3)[level - 1]


def _for_all_levels(value: object) -> object:
    if isinstance(value, dict | ByLevel):
        return value
    return {"level 1": value, "level 2": value, "level 3": value}


WholeByLevel = Annotated[ByLevel[Whole], BeforeValidator(_for_all_levels)]
SecondsByLevel = Annotated[ByLevel[Seconds], BeforeValidator(_for_all_levels)]
DoseByLevel = Annotated[ByLevel[DoseText], BeforeValidator(_for_all_levels)]
OptionByLevel = Annotated[ByLevel[str | None], BeforeValidator(_for_all_levels)]


class Work(Model):
    """One exercise in a plan, with its dose; `dose` is absent in timed intervals."""

    exercise: str
    option: OptionByLevel | None = None
    dose: DoseByLevel | None = None
    load: LoadText | None = None
    effort: EffortText | None = None
    tempo: TempoText | None = None
    position: Position | None = None


class StraightSets(Work):
    structure: Literal["straight sets"]
    dose: DoseByLevel
    sets: WholeByLevel
    rest: SecondsByLevel


class Superset(Model):
    structure: Literal["superset"]
    rounds: WholeByLevel
    rest_inside: SecondsByLevel = Field(alias="rest inside")
    rest_after: SecondsByLevel = Field(alias="rest after")
    exercises: tuple[Work, ...] = Field(min_length=2)


class Circuit(Model):
    structure: Literal["circuit"]
    rounds: WholeByLevel
    station_rest: SecondsByLevel = Field(alias="station rest")
    round_rest: SecondsByLevel = Field(alias="round rest")
    exercises: tuple[Work, ...] = Field(min_length=3)


class Intervals(Model):
    structure: Literal["intervals"]
    work: SecondsByLevel
    rest: SecondsByLevel
    rounds: WholeByLevel
    round_rest: SecondsByLevel = Field(alias="round rest")
    exercises: tuple[Work, ...] = Field(min_length=1)


class AsManyRounds(Model):
    structure: Literal["as many rounds as possible"]
    time: SecondsByLevel
    exercises: tuple[Work, ...] = Field(min_length=1)


class EveryMinute(Model):
    """Each exercise starts on a full minute; what is left of it is rest."""

    structure: Literal["every minute"]
    time: SecondsByLevel
    exercises: tuple[Work, ...] = Field(min_length=1)


Structure = Annotated[
    StraightSets | Superset | Circuit | Intervals | AsManyRounds | EveryMinute,
    Field(discriminator="structure"),
]


class EasyPart(Model):
    """Warm-up or cool-down: how long, and what to do in it."""

    time: Seconds
    exercises: tuple[Work, ...] = ()


class PlanFacts(Model):
    """A plan file.

    version: counted from 1; each version has a file of its own, so that an
        old log still finds the plan that it belongs to.
    note: what changed since the last version, in the trainer's words.
    """

    plan: str
    version: Whole
    title: dict[str, str] | str
    date: Date
    review_by: Date | None = Field(None, alias="review by")
    note: dict[str, str] | str | None = None
    warm_up: EasyPart | None = Field(None, alias="warm-up")
    session: tuple[Structure, ...] = Field(min_length=1)
    cool_down: EasyPart | None = Field(None, alias="cool-down")


class Plan(Model):
    path: str
    facts: PlanFacts


# --- clients -----------------------------------------------------------------

SheetKind: TypeAlias = Literal["sheet", "card", "log"]
ALL_SHEETS: tuple[SheetKind, ...] = ("sheet", "card", "log")


def _read_points(text: str) -> int:
    number, _, unit = text.strip().rpartition(" ")
    if unit != "pt" or not number.isascii() or not number.isdigit() or not 14 <= int(number) <= 48:
        raise ValueError(f"'{text}' is not a print size from 14 to 48 points; write '24 pt'")
    return int(number)


Points = Annotated[int, *_strict(_read_points, "24 pt")]


class PrintForm(Model):
    """size: points, 14 to 48.  weight: of the running text."""

    size: Points = 18
    weight: Literal["regular", "bold"] = "regular"
    paper: Literal["A4", "Letter"] = "A4"
    colours: Literal["black on white", "white on black", "black on yellow", "yellow on black"] = "black on white"
    both_sides: YesNo = Field(False, alias="both sides")
    sheets: tuple[SheetKind, ...] = ALL_SHEETS


class ScreenForm(Model):
    sheets: tuple[SheetKind, ...] = ("sheet", "card", "log")


class BrailleForm(Model):
    """code and grade choose the liblouis tables; width in cells, length in lines.

    grade: 1 uncontracted, 2 contracted.  print_twin: also a print copy of the
    same pages for the trainer (not yet: reserved for the proof).
    """

    code: Literal["ueb", "fr", "es", "de"] = "ueb"
    grade: Whole = 2
    width: Whole = 40
    length: Whole = 25
    both_sides: YesNo = Field(False, alias="both sides")
    running_head: YesNo = Field(True, alias="running head")
    sheets: tuple[SheetKind, ...] = ALL_SHEETS


class Forms(Model):
    """In which forms this client reads; at least one."""

    print: PrintForm | None = None
    screen: ScreenForm | None = None
    braille: BrailleForm | None = None


class Cuff(Model):
    """A weight cuff for a forearm without a hand to grip."""

    side: Side
    up_to: MassText = Field(alias="up to")
    step: MassText


class Kit(Model):
    """What the client owns or finds at the gym.

    dumbbells: counted pieces; two of the same stamp make a pair.
    bands: names that tell by touch, such as "one knot".
    step_heights: heights of steps that can be made up.
    other: bench, chair, mat, ...; a wall is always there.
    """

    dumbbells: tuple[PiecesText, ...] = ()
    bands: tuple[str, ...] = ()
    step_heights: tuple[Centimetres, ...] = Field((), alias="step heights")
    cuff: Cuff | None = None
    other: tuple[KitName, ...] = ()


class Limit(Model):
    """One thing this client's body asks for.  Exactly one of `demand`,
    `joint` or `position` is given.

    demand: leave out movements with this demand; breath_hold_risk is kept
        where the text has a breathing cue, and the sheet tells to breathe.
    joint: bend of a joint; `side` and `at most` belong to it.
    position: the only position allowed ("seated").
    advised_by, since, review: who said so and when; past `review` the trainer
        is told to ask again, and the limit stays.
    """

    demand: Demand | None = None
    joint: Literal["knee"] | None = None
    side: Side | None = None
    at_most: Degrees | None = Field(None, alias="at most")
    position: Position | None = Field(None, alias="only position")
    since: Date | None = None
    advised_by: str | None = Field(None, alias="advised by")
    review: Date | None = None


class PlanChoice(Model):
    """version None means the newest."""

    plan: str
    version: Whole | None = None


class TwoSided(Model):
    """A load for each side."""

    left: LoadText | None = None
    right: LoadText | None = None


class BestSet(Model):
    """A hard set the client did: the base of an estimated maximum."""

    load: LoadText
    reps: Whole
    in_reserve: Whole = Field(0, alias="in reserve")


class Screening(Model):
    date: Date
    by: str
    outcome: Literal["cleared", "referred"]


class ClientFacts(Model):
    """A client file.

    hands: which hands can grip; "right" or "left" for one-handed clients.
    pace: how kit is found between exercises; sets the change-over time
        (common practice: 30 s sighted, 75 s by touch).
    other_side: the second side "written out" in full or told "short".
    pictures: "liked" lets likenesses from sighted life into the sheet.
    touch: how the coach may teach: "words only", "client feels coach",
        "coach guides client".
    loads: what the trainer asks for, by exercise id; goes before the plan's.
    private: the trainer's notes, on health too.  Never printed, never logged.
    """

    code: str
    name: str
    age: Whole | None = None
    language: str = "en"
    forms: Forms
    units: Literal["kg", "lb"]
    place: Literal["home", "gym"] = "home"
    level: Whole = 1
    minutes: Seconds | None = None
    pace: Literal["sighted", "by touch"] = "sighted"
    other_side: Literal["written out", "short"] = Field("written out", alias="other side")
    pictures: Literal["liked", "none"] = "none"
    touch: Literal["words only", "client feels coach", "coach guides client"] = "words only"
    guide_dog: YesNo = Field(False, alias="guide dog")
    hands: Literal["both", "left", "right"] = "both"
    weaker_side: Side | None = Field(None, alias="weaker side")
    log_by: Literal["pen", "slate", "voice", "keys"] = Field("pen", alias="log by")
    effort_cap: Whole | None = Field(None, alias="effort cap")
    kit: Kit = Kit()
    limits: tuple[Limit, ...] = ()
    plans: tuple[PlanChoice, ...] = Field(min_length=1)
    loads: dict[str, LoadText | TwoSided] = {}
    best_sets: dict[str, BestSet] = Field({}, alias="best sets")
    screening: Screening | None = None
    private: str | None = None


class Client(Model):
    """path: the file, for messages.  lines: first line of each top-level key."""

    path: str
    facts: ClientFacts
    lines: dict[str, int] = {}


# --- studio and logs ---------------------------------------------------------


class StudioFacts(Model):
    """studio.yaml.  format: version of the folder's format, 1 today.

    phone: whom the client calls with a question.  emergency: the local number.
    """

    format: Whole = 1
    name: str
    coach: str
    phone: str | None = None
    emergency: str


class LogLine(Model):
    """One line of logs/CLIENT.csv: one exercise, or "session", on one day.

    weight, reps (per set, last one last), seconds, effort, note are None or ()
    when the client did not say: unknown is not zero.
    raw: what came in, word for word.
    """

    line: int
    date: datetime.date | None
    plan: str
    version: int
    exercise: str
    side: Side | None
    weight: amounts.Mass | None
    reps: tuple[int, ...]
    seconds: int | None
    effort: int | None
    note: str
    raw: str


class Studio(Model):
    """All that one studio folder says.

    exercises: (id, language) to text; starter texts and the studio's own.
    plans: (plan, version) to plan.
    """

    facts: StudioFacts
    exercises: dict[tuple[str, str], Exercise]
    plans: dict[tuple[str, int], Plan]
    clients: dict[str, Client]
    logs: dict[str, tuple[LogLine, ...]]
