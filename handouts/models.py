"""What a trainer's files say, as frozen models.  No input or output, no markup.

The field aliases (with spaces) are the keys of the files.  All scalars of a
file arrive as text, exactly as written, and are read strictly here; a
validator's ValueError reads "what is wrong; what to write instead".

A line "field: what it means" in a class's docstring is also what an editor
shows for that key, through the JSON Schema.
"""

from __future__ import annotations

import datetime
import unicodedata
from collections.abc import Callable
from decimal import Decimal
from itertools import chain, pairwise
from typing import Annotated, Any, Generic, Literal, TypeAlias, TypeVar

from pydantic import (
    AfterValidator,
    BaseModel,
    BeforeValidator,
    ConfigDict,
    Discriminator,
    Field,
    Tag,
    WithJsonSchema,
    field_validator,
    model_validator,
)

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
LEVELS: tuple[Level, ...] = (1, 2, 3)


Read = TypeVar("Read")
T = TypeVar("T")


def _refuse_blocks(value: object, example: str) -> None:
    """A list or a mapping where one value belongs, or nothing at all."""
    such_as = f", such as '{example}'" if example else ""
    if isinstance(value, dict | list):
        found = "a list" if isinstance(value, list) else "a block of keys"
        raise ValueError(f"{found} stands where one value belongs; write it on one line{such_as}")
    if value == "":
        raise ValueError(f"there is no value; write one after the colon{such_as}, or take the line out")


def _strict(reader: Callable[[str], Read], example: str, **schema: Any) -> tuple[BeforeValidator, WithJsonSchema]:
    """A field that is text in the file and read by one of `amounts`' readers."""

    def read(value: object) -> object:
        _refuse_blocks(value, example)
        return reader(value) if isinstance(value, str) else value

    examples = {"examples": [example]} if example else {}
    return BeforeValidator(read), WithJsonSchema({"type": "string", **examples, **schema})


def _read_truth(text: str) -> bool:
    if text not in ("yes", "no"):
        raise ValueError(f"{amounts.quoted(text)} is neither yes nor no; write 'yes' or 'no'")
    return text == "yes"


def _read_words(text: str) -> str:
    """Words on one line.  The end of a folded block is no part of them."""
    words = text.strip()
    if "\n" in words:
        raise ValueError(f"{amounts.quoted(text)} runs over several lines; write it on one line")
    if not words:
        raise ValueError("there are only spaces; write the words")
    if len(words) > 500:
        raise ValueError(f"the words are {len(words)} characters long; write at most 500")
    return words


def _read_code(text: str) -> str:
    # One form of each accented letter, since a code names files and is compared.
    words = unicodedata.normalize("NFC", _read_words(text))
    if len(words) > 40:
        raise ValueError(f"{amounts.quoted(text)} is {len(words)} characters long; write a code of at most 40")
    return words


def _whole(low: int, high: int, example: str) -> tuple[BeforeValidator, WithJsonSchema]:
    """A whole number within bounds (both included)."""

    def read(text: str) -> int:
        number = amounts.read_whole_number(text)
        if not low <= number <= high:
            raise ValueError(f"{number} is not from {low} to {high}; write a whole number in that range")
        return number

    return _strict(read, example, type=["string", "integer"], pattern="^(0|[1-9][0-9]*)$", minimum=low, maximum=high)


def _seconds(low: int, high: int, example: str) -> tuple[BeforeValidator, WithJsonSchema]:
    def read(text: str) -> int:
        seconds = amounts.read_seconds(text)
        if not low <= seconds <= high:
            raise ValueError(f"{amounts.quoted(text)} is not from {low} s to {high // 60} min; write a time in that range")
        return seconds

    return _strict(read, example)


def _list(value: object) -> object:
    """`key:` with nothing below it is an empty list, not an empty word."""
    if value == "":
        return ()
    if isinstance(value, str | dict):
        found = amounts.quoted(value) if isinstance(value, str) else "a block of keys"
        raise ValueError(f"{found} stands where a list belongs; write each item on a line of its own after '- '")
    return value


def _map(value: object) -> object:
    """`key:` with nothing below it is an empty block, not an empty word."""
    if value == "":
        return {}
    if isinstance(value, str | list):
        found = amounts.quoted(value) if isinstance(value, str) else "a list"
        raise ValueError(f"{found} stands where a block of keys belongs; write 'key: value' lines below it, indented")
    return value


ListOf = Annotated[tuple[T, ...], BeforeValidator(_list)]
MapOf = Annotated[dict[str, T], BeforeValidator(_map)]

Words = Annotated[str, *_strict(_read_words, "", type=["string", "number"])]
Code = Annotated[str, *_strict(_read_code, "P1", type=["string", "number"])]
LongWords = Annotated[str, *_strict(str, "", type=["string", "number"])]
Whole = Annotated[int, *_whole(0, 999, "3")]
Count = Annotated[int, *_whole(1, 50, "3")]
Age = Annotated[int, *_whole(1, 120, "47")]
EffortCap = Annotated[int, *_whole(1, 10, "5")]
Cells = Annotated[int, *_whole(20, 60, "40")]
Lines = Annotated[int, *_whole(8, 40, "25")]
Margin = Annotated[int, *_whole(0, 8, "2")]
Grade = Annotated[int, *_whole(1, 2, "2")]
LevelNumber = Annotated[Level, *_whole(1, 3, "1")]
Version = Annotated[int, *_whole(1, 999, "1")]
Seconds = Annotated[int, *_seconds(0, 4 * 3600, "90 s")]
SomeSeconds = Annotated[int, *_seconds(1, 4 * 3600, "40 s")]
Centimetres = Annotated[Decimal, *_strict(amounts.read_centimetres, "15 cm")]
Degrees = Annotated[int, *_strict(amounts.read_degrees, "90 degrees")]
Date = Annotated[datetime.date, *_strict(amounts.read_date, "2029-01-08")]
YesNo = Annotated[bool, *_strict(_read_truth, "yes", enum=["yes", "no"])]
LoadText = Annotated[amounts.AskedLoad, *_strict(amounts.read_load, "6 kg each")]
DoseText = Annotated[amounts.Dose, *_strict(amounts.read_dose, "8-12 reps each side")]
EffortText = Annotated[amounts.Effort, *_strict(amounts.read_effort, "2 in reserve")]
TempoText = Annotated[amounts.Tempo, *_strict(amounts.read_tempo, "3-1-2-0")]
MassText = Annotated[amounts.Mass, *_strict(amounts.read_mass, "12.5 kg")]
PiecesText = Annotated[amounts.Pieces, *_strict(amounts.read_pieces, "2 x 5 lb")]
TensionText = Annotated[amounts.Tension, *_strict(amounts.read_tension, "5-9 kg")]
Handles = Annotated[int, *_whole(1, 2, "2")]


class Model(BaseModel):
    # Built at the first use: a worker that only gets finished models never does.
    model_config = ConfigDict(
        frozen=True, extra="forbid", populate_by_name=True, arbitrary_types_allowed=True, defer_build=True
    )

    @model_validator(mode="before")
    @classmethod
    def _empty_block(cls, value: object) -> object:
        """`screen:` with nothing below it asks for all the usual settings."""
        return {} if value == "" else value


def _one_or_block(value: object) -> str:
    return "block" if isinstance(value, dict | Model) else "one"


# --- exercise texts ----------------------------------------------------------


def _split_choice(value: object) -> object:
    return tuple(value.split(" or ")) if isinstance(value, str) else value


KitChoice = Annotated[
    tuple[KitName, ...],
    BeforeValidator(_split_choice),
    WithJsonSchema({"type": "string", "examples": ["bench or chair"]}),
]


class Option(Model):
    """An easier or harder way that changes what an exercise needs or demands.

    Its words are the list item of the same name under Easier or Harder.  A
    field that is None leaves the exercise's own value as it is.

    one_handed: for clients with one hand that grips, and for them first; no
        other client meets it.
    """

    title: Words | None = None
    one_handed: YesNo = Field(False, alias="one handed")
    equipment: ListOf[KitChoice] | None = None
    position: Position | None = None
    sides: SidePattern | None = None
    hands: Hands | None = None
    demands: ListOf[Demand] | None = None
    knee_bend: Degrees | None = Field(None, alias="knee bend")
    step_height: Centimetres | None = Field(None, alias="step height")


class Substitute(Model):
    """Another exercise, or an option of one, that serves the same end.

    exercise: id, the name of its file without ".md".
    option: id of an easier or harder way of it.
    """

    exercise: Code
    option: Code | None = None


class ExerciseFacts(Model):
    """The front matter of an exercise text.

    title: the name of the exercise, as it stands on the sheet.
    language: tag of the text's language.
    equipment: what is needed; each entry is one kit name, or alternatives
        joined by " or " in the file ("bench or chair").
    positions: the first is the usual one.
    written_for: the side that the text is written for; None when sides are
        "together" or when the text names no side.
    sides: "together", "each" (one side, then the other) or "alternating".
    hands: how hands hold the weight: "one each" (a pair), "both on one",
        "one" (the working hand alone), "none".
    cuff: a weight cuff on a forearm can replace the grip.
    clock: where 12 o'clock is: straight ahead on the floor, up on the wall,
        beyond the crown of the head of someone who lies, or across the body.
    regions: what works, in plain words.
    demands: what the movement asks of a body at its usual range.
    knee_bend: the deepest bend of a knee, degrees from straight.
    step_height: of the step that the text is written for.
    options: data of easier and harder ways, by id; their words are the items
        under Easier and Harder.
    substitutes: in the order in which to try them.
    seconds_per_rep: at an easy, controlled pace (common practice: 4 s).
    picture: a likeness from sighted life, only for clients who like them.
    """

    title: Words
    language: Code = "en"
    equipment: ListOf[KitChoice] = ()
    positions: ListOf[Position] = Field(min_length=1)
    sides: SidePattern
    written_for: Side | None = Field(None, alias="written for")
    hands: Hands = "none"
    cuff: YesNo = False
    clock: ClockFrame | None = None
    regions: ListOf[Words] = Field(min_length=1)
    demands: ListOf[Demand] = ()
    knee_bend: Degrees | None = Field(None, alias="knee bend")
    step_height: Centimetres | None = Field(None, alias="step height")
    options: MapOf[Option] = {}
    substitutes: ListOf[Substitute] = ()
    seconds_per_rep: SomeSeconds = Field(4, alias="seconds per rep")
    picture: Words | None = None


class OptionWords(Model):
    """The name of an easier or harder option in another language."""

    title: Words


class ExerciseWords(Model):
    """The front matter of an exercise text in another language than English.

    It gives words alone; what the movement needs and demands stands in the
    English text of the same id.
    options: by the option's id in the English text.
    """

    language: Code
    title: Words
    picture: Words | None = None
    options: MapOf[OptionWords] = {}


class Paragraph(Model):
    text: str
    line: int


class ListItem(Model):
    """option: id of the easier or harder option that this item words, else None."""

    text: str
    line: int
    items: tuple[ListItem, ...] = ()
    option: str | None = None


class ItemList(Model):
    ordered: bool
    items: tuple[ListItem, ...]


TextBlock: TypeAlias = Paragraph | ItemList


class Part(Model):
    """One headed part of an exercise text.  Texts keep Markdown emphasis
    (**strong**) and nothing else of Markdown.

    option: id of the option whose words these are, in place of the part's
        own; None for the part itself.
    """

    name: PartName
    blocks: tuple[TextBlock, ...]
    line: int
    option: str | None = None


class Exercise(Model):
    """One exercise text in one language.

    id: the file's stem.  path: the file, relative to the studio (or to the
        starter library), for messages.  starter: True for the texts that come
        with the program.
    variants: whole parts in the words of one option.
    """

    id: str
    path: str
    starter: bool
    facts: ExerciseFacts
    parts: tuple[Part, ...]
    variants: tuple[Part, ...] = ()

    def part(self, name: PartName, option: str | None = None) -> Part | None:
        """A part in the words of an option, where the option has its own."""
        own = (part for part in self.variants if option and (part.name, part.option) == (name, option))
        return next(chain(own, (part for part in self.parts if part.name == name)), None)


# --- plans -------------------------------------------------------------------

class ByLevel(Model, Generic[T]):
    """One value for each level; a file may give one value for all three."""

    model_config = ConfigDict(title="By level")

    level_1: T = Field(alias="level 1")
    level_2: T = Field(alias="level 2")
    level_3: T = Field(alias="level 3")

    def at(self, level: Level) -> T:
        return (self.level_1, self.level_2, self.level_3)[level - 1]


def _for_all_levels(value: object) -> object:
    if isinstance(value, dict | ByLevel):
        return value
    return {"level 1": value, "level 2": value, "level 3": value}


def _no_option(value: object) -> object:
    return None if value == "none" else value


OptionName = Annotated[Code | None, BeforeValidator(_no_option)]

CountByLevel = Annotated[ByLevel[Count], BeforeValidator(_for_all_levels, json_schema_input_type=Count | ByLevel[Count])]
SecondsByLevel = Annotated[
    ByLevel[Seconds], BeforeValidator(_for_all_levels, json_schema_input_type=Seconds | ByLevel[Seconds])
]
SomeSecondsByLevel = Annotated[
    ByLevel[SomeSeconds], BeforeValidator(_for_all_levels, json_schema_input_type=SomeSeconds | ByLevel[SomeSeconds])
]
DoseByLevel = Annotated[
    ByLevel[DoseText], BeforeValidator(_for_all_levels, json_schema_input_type=DoseText | ByLevel[DoseText])
]
OptionByLevel = Annotated[
    ByLevel[OptionName], BeforeValidator(_for_all_levels, json_schema_input_type=OptionName | ByLevel[OptionName])
]


class PlanChoice(Model):
    """A plan that this client follows.

    plan: its code.
    version: None means the newest.
    """

    plan: Code
    version: Version | None = None


class TwoSided(Model):
    """A load for each side."""

    left: LoadText | None = None
    right: LoadText | None = None


OneOrTwoSided = Annotated[
    Annotated[LoadText, Tag("one")] | Annotated[TwoSided, Tag("block")], Discriminator(_one_or_block)
]

WordsByLanguage = Annotated[
    Annotated[Words, Tag("one")] | Annotated[MapOf[Words], Tag("block")], Discriminator(_one_or_block)
]


class Work(Model):
    """One exercise in a plan.

    exercise: id, the name of its file without ".md".
    option: id of an easier or harder way; "none" in the file for a level that
        does the exercise as it is.
    dose: how much; None in timed intervals, where the work time decides, and
        where a warm-up leaves it open.
    usual_dose: to come back to with the next weight, where `dose` was raised
        because that weight is still too far away.
    load: for every client whose own file asks for none.
    effort: how hard, such as "2 in reserve" or "RPE 8".
    tempo: counts to lower, pause, lift, pause, such as "3-1-2-0".
    position: one of those that the exercise can be done in.
    """

    exercise: Code
    option: OptionByLevel | None = None
    dose: DoseByLevel | None = None
    usual_dose: DoseText | None = Field(None, alias="usual dose")
    load: LoadText | None = None
    effort: EffortText | None = None
    tempo: TempoText | None = None
    position: Position | None = None


class DosedWork(Work):
    """One exercise with the dose that it must have."""

    dose: DoseByLevel


class TimedWork(Work):
    """One exercise of timed intervals: the work time is its dose."""

    @field_validator("dose", mode="before")
    @classmethod
    def _no_dose(cls, value: object) -> object:
        if value is not None:
            raise ValueError("timed intervals have no dose of their own; take the line out, 'work' gives the time")
        return value


class StraightSets(DosedWork):
    """All sets of one exercise, one after another.

    sets: how many.
    rest: between sets; none after the last.
    """

    structure: Literal["straight sets"]
    sets: CountByLevel
    rest: SecondsByLevel


class Superset(Model):
    """Two or more exercises back to back, as often as there are rounds.

    rest_inside: between the exercises of a round.
    rest_after: between rounds; none after the last.
    """

    structure: Literal["superset"]
    rounds: CountByLevel
    rest_inside: SecondsByLevel = Field(alias="rest inside")
    rest_after: SecondsByLevel = Field(alias="rest after")
    exercises: ListOf[DosedWork] = Field(min_length=2)


class Circuit(Model):
    """Three or more stations, one after another, as often as there are rounds.

    station_rest: between stations.
    round_rest: between rounds; none after the last.
    """

    structure: Literal["circuit"]
    rounds: CountByLevel
    station_rest: SecondsByLevel = Field(alias="station rest")
    round_rest: SecondsByLevel = Field(alias="round rest")
    exercises: ListOf[DosedWork] = Field(min_length=3)


class Intervals(Model):
    """Work and rest by the clock, station after station.

    work: time at each station.
    rest: between stations.
    round_rest: between rounds; none after the last.
    """

    structure: Literal["intervals"]
    work: SomeSecondsByLevel
    rest: SecondsByLevel
    rounds: CountByLevel
    round_rest: SecondsByLevel = Field(alias="round rest")
    exercises: ListOf[TimedWork] = Field(min_length=1)


class AsManyRounds(Model):
    """As many good rounds as the time allows.

    time: for all rounds together.
    """

    structure: Literal["as many rounds as possible"]
    time: SomeSecondsByLevel
    exercises: ListOf[DosedWork] = Field(min_length=1)


class EveryMinute(Model):
    """Each exercise starts on a full minute; what is left of it is rest.

    time: for all of it.
    """

    structure: Literal["every minute"]
    time: SomeSecondsByLevel
    exercises: ListOf[DosedWork] = Field(min_length=1)


Structure = Annotated[
    StraightSets | Superset | Circuit | Intervals | AsManyRounds | EveryMinute,
    Field(discriminator="structure"),
]


class EasyPart(Model):
    """Warm-up or cool-down: how long, and what to do in it.

    time: for the whole part.
    """

    time: SomeSeconds
    exercises: ListOf[Work] = ()


class PlanFacts(Model):
    """A plan file.

    plan: short code that stands on every sheet and in every log.
    version: counted from 1; each version has a file of its own, so that an
        old log still finds the plan that it belongs to.
    client: code of the one client that this version is for; None for all.
    after: the plan and version that this one takes the place of, for what
        changed; None means the version before of the same plan.
    title: one for all, or one for each language tag.
    date: of this version.
    review_by: when trainer and client should look at the plan again.
    note: what changed since the last version, in the trainer's words; one for
        all, or one for each language tag.
    loads: what this version asks of its one client, by exercise id; goes
        before the loads in the client's file.
    warm_up: before the session.
    session: the parts of the session, in order.
    cool_down: after the session.
    """

    plan: Code
    version: Version
    client: Code | None = Field(None, alias="for")
    after: PlanChoice | None = None
    title: WordsByLanguage
    date: Date
    review_by: Date | None = Field(None, alias="review by")
    note: WordsByLanguage | None = None
    loads: MapOf[OneOrTwoSided] = {}
    warm_up: EasyPart | None = Field(None, alias="warm-up")
    session: ListOf[Structure] = Field(min_length=1)
    cool_down: EasyPart | None = Field(None, alias="cool-down")

    @model_validator(mode="after")
    def _loads_are_somebodys(self) -> PlanFacts:
        if self.loads and self.client is None:
            raise ValueError("'loads' belong to one client; write 'for:' with the client's code, or 'load:' at the exercises")
        return self


class Plan(Model):
    path: str
    facts: PlanFacts


# --- clients -----------------------------------------------------------------

SheetKind: TypeAlias = Literal["sheet", "card", "log"]
Sheets = Annotated[ListOf[SheetKind], Field(min_length=1)]
ALL_SHEETS: tuple[SheetKind, ...] = ("sheet", "card", "log")


def _read_points(text: str) -> int:
    number, _, unit = text.strip().rpartition(" ")
    if unit != "pt" or not (number.isascii() and number.isdigit() and len(number) == 2 and 14 <= int(number) <= 48):
        raise ValueError(f"{amounts.quoted(text)} is not a print size from 14 to 48 points; write '24 pt'")
    return int(number)


Points = Annotated[int, *_strict(_read_points, "24 pt")]


class PrintForm(Model):
    """Large print on paper.

    size: 14 pt to 48 pt.
    weight: of the running text.
    both_sides: printed on both sides of the paper.
    sheets: which of the full sheet, the memory card and the log sheet.
    log_landscape: the log sheet on pages that are wider than high, up to the
        print size at which such a page still holds an exercise and its boxes.
    line_spacing: times the size; "by size" is 1.5, and 1.3 above 28 pt.
    """

    size: Points = 18
    weight: Literal["regular", "bold"] = "regular"
    paper: Literal["A4", "Letter"] = "A4"
    colours: Literal["black on white", "white on black", "black on yellow", "yellow on black"] = "black on white"
    both_sides: YesNo = Field(False, alias="both sides")
    log_landscape: YesNo = Field(False, alias="log landscape")
    line_spacing: Literal["by size", "1.25", "1.5", "2"] = Field("by size", alias="line spacing")
    sheets: Sheets = ALL_SHEETS


class ScreenForm(Model):
    """A page for a screen reader or a magnifier.

    sheets: which of the full sheet, the memory card and the log sheet.
    """

    sheets: Sheets = ALL_SHEETS


class EpubForm(Model):
    """An e-book for a phone, a tablet or a reading device.

    sheets: which of the full sheet, the memory card and the log sheet.
    """

    sheets: Sheets = ALL_SHEETS


class TextForm(Model):
    """Plain text for messages and notetakers.

    lines: broken at 72 columns, or one line for each paragraph.
    sheets: which of the full sheet, the memory card and the log sheet.
    """

    lines: Literal["72 columns", "unbroken"] = "72 columns"
    sheets: Sheets = ALL_SHEETS


BraillePaper: TypeAlias = Literal["11.5 x 11 inch", "Letter", "A4", "notetaker"]

# Cells a line and lines a page.  11.5 x 11 inch: the size usual in North
# America (BANA sample notes).  Letter and A4: what fits at 6.2 mm a cell and
# 10 mm a line with a margin for binding, as samples of both have it.  A
# notetaker has no pages (length 0).
_BRAILLE_PAPERS: dict[str, tuple[int, int]] = {
    "11.5 x 11 inch": (40, 25), "Letter": (30, 25), "A4": (28, 28), "notetaker": (32, 0),
}


class BrailleForm(Model):
    """Braille, as a file to emboss or to read on a braille display.

    code: the braille code; with the grade it chooses the liblouis tables.
    grade: 1 uncontracted, 2 contracted.
    tables: names of liblouis tables to use in place of those of code and grade.
    numbers: French digits in the mathematical notation (antoine) or as a to j
        after the number sign (letters).
    paper: gives width and length where they are not written; a notetaker has
        no pages.
    width: cells in a line.
    length: lines on a page.
    both_sides: embossed on both sides of the paper.
    binding_margin: cells of the width that stay empty at the binding edge.
    running_head: client, plan and page at the top of every page.
    page_number: where it stands.
    file: what is written: brf for an embosser, pef for embossing programs,
        unicode for a text of braille cells, ebraille for a braille display.
    padded: every line of a brf file filled with spaces to the width.
    letters: of a brf file.
    volume_pages: a sheet of more pages than this is split into volumes; 0
        never splits.
    sheets: which of the full sheet, the memory card and the log sheet.
    """

    code: Literal["ueb", "fr", "es", "de"] = "ueb"
    grade: Grade = 2
    tables: ListOf[Words] = ()
    numbers: Literal["antoine", "letters"] = "antoine"
    paper: BraillePaper = "11.5 x 11 inch"
    width: Cells = 40
    length: Lines = 25
    both_sides: YesNo = Field(False, alias="both sides")
    binding_margin: Margin = Field(0, alias="binding margin")
    running_head: YesNo = Field(True, alias="running head")
    page_number: Literal["bottom right", "top right"] = Field("bottom right", alias="page number")
    file: Literal["brf", "pef", "unicode", "ebraille"] = "brf"
    padded: YesNo = False
    letters: Literal["upper case", "lower case"] = "upper case"
    volume_pages: Whole = Field(0, alias="volume pages")
    sheets: Sheets = ALL_SHEETS

    @model_validator(mode="before")
    @classmethod
    def _size_of_paper(cls, values: object) -> object:
        """A named paper gives the width and length that are not written."""
        if isinstance(values, dict) and values.get("paper") in _BRAILLE_PAPERS:
            width, length = _BRAILLE_PAPERS[values["paper"]]
            return {"width": width, "length": length, **values}
        return values


class Forms(Model):
    """In which forms this client reads; at least one.  None: not in this form."""

    print: PrintForm | None = None
    screen: ScreenForm | None = None
    braille: BrailleForm | None = None
    epub: EpubForm | None = None
    text: TextForm | None = None

    @model_validator(mode="after")
    def _some_form(self) -> Forms:
        if all(getattr(self, name) is None for name in Forms.model_fields):
            raise ValueError("no form is named; write 'print:', 'screen:', 'braille:', 'epub:' or 'text:' below 'forms:'")
        return self

    @classmethod
    def defaults(cls, name: str) -> AnyForm:
        """The usual settings of one form, for a form that was asked for by hand."""
        usual: dict[str, AnyForm] = {
            "print": PrintForm(), "screen": ScreenForm(), "braille": BrailleForm(), "epub": EpubForm(), "text": TextForm(),
        }
        return usual[name]


AnyForm: TypeAlias = PrintForm | ScreenForm | BrailleForm | EpubForm | TextForm


class Cuff(Model):
    """A weight cuff for a forearm without a hand to grip.

    up_to: the heaviest that it can be made.
    step: from one weight to the next.
    """

    side: Side
    up_to: MassText = Field(alias="up to")
    step: MassText


class Adjustable(Model):
    """Handles that are loaded with plates, the same on both ends.

    handles: how many equal ones; two of them can be set to the same weight.
    handle: one handle with its collars.
    plates: all plates of each size, counted; each end takes as many as the other.
    up_to: the heaviest that one handle may be made.
    """

    handles: Handles = 1
    handle: MassText
    plates: ListOf[PiecesText] = Field(min_length=1, max_length=12)
    up_to: MassText | None = Field(None, alias="up to")


class Band(Model):
    """One band.

    name: tells by touch, such as "one knot".
    tension: as its maker gives it, from little to full stretch.
    """

    name: Words
    tension: TensionText | None = None


def _band_by_name(value: object) -> object:
    return {"name": value} if isinstance(value, str) else value


def _lightest_first(bands: tuple[Band, ...]) -> tuple[Band, ...]:
    known = [band for band in bands if band.tension]
    for lighter, stronger in pairwise(known):
        if lighter.tension and stronger.tension and stronger.tension.most.kilograms < lighter.tension.most.kilograms:
            raise ValueError(
                f"'{stronger.name}' pulls less than '{lighter.name}' above it; write the bands from the lightest to the strongest"
            )
    return bands


Bands = Annotated[
    ListOf[Annotated[Band, BeforeValidator(_band_by_name, json_schema_input_type=Words | Band)]],
    AfterValidator(_lightest_first),
]


class Kit(Model):
    """What the client owns or finds at the gym.

    dumbbells: counted pieces; two of the same stamp make a pair.
    adjustable: handles with plates.
    bands: from the lightest to the strongest, by names that tell by touch.
    step_heights: heights of steps that can be made up.
    other: bench, chair, mat, ...; a wall is always there.
    """

    dumbbells: ListOf[PiecesText] = ()
    adjustable: ListOf[Adjustable] = ()
    bands: Bands = ()
    step_heights: ListOf[Centimetres] = Field((), alias="step heights")
    cuff: Cuff | None = None
    other: ListOf[KitName] = ()


class Limit(Model):
    """One thing this client's body asks for.  Exactly one of `demand`,
    `joint`, `only position`, `not position` and `heaviest` is given.

    demand: leave out movements with this demand; breath_hold_risk is kept
        where the text has a breathing cue, and the sheet tells to breathe.
    with_caution: keep movements with this demand, and repeat the caution at
        each of them.
    joint: bend of a joint; `side` and `at most` belong to it.
    position: the only position allowed ("seated").
    not_position: a position to leave out.
    heaviest: the most to hold at once; of a pair each is at most half of it.
    exercise: id of the one exercise that `heaviest` is meant for.
    advised_by, since, review: who said so and when; past `review` the trainer
        is told to ask again, and the limit stays.
    """

    demand: Demand | None = None
    with_caution: YesNo = Field(False, alias="with caution")
    joint: Literal["knee"] | None = None
    side: Side | None = None
    at_most: Degrees | None = Field(None, alias="at most")
    position: Position | None = Field(None, alias="only position")
    not_position: Position | None = Field(None, alias="not position")
    heaviest: MassText | None = None
    exercise: Code | None = None
    since: Date | None = None
    advised_by: Words | None = Field(None, alias="advised by")
    review: Date | None = None

    @model_validator(mode="after")
    def _one_thing(self) -> Limit:
        things = (self.demand, self.joint, self.position, self.not_position, self.heaviest)
        if sum(thing is not None for thing in things) != 1:
            raise ValueError(
                "a limit names one thing; write one of 'demand:', 'joint:', 'only position:', 'not position:' and 'heaviest:'"
            )
        if (self.at_most is not None) != (self.joint is not None):
            raise ValueError("'joint' and 'at most' belong together; write both, such as 'at most: 90 degrees'")
        if self.side is not None and self.joint is None:
            raise ValueError("'side' belongs to a joint; write 'joint: knee' beside it, or take 'side' out")
        if self.with_caution and self.demand is None:
            raise ValueError("'with caution' belongs to a demand; write 'demand:' beside it, or take it out")
        if self.exercise is not None and self.heaviest is None:
            raise ValueError("'exercise' belongs to a weight; write 'heaviest:' beside it, or take it out")
        return self


class CareChoice(Model):
    """One entry of the care table that holds for this client.

    care: its name in the table; never printed.
    side: which side it concerns.
    at_most: the deepest bend that was allowed, where it concerns a joint.
    without: what of it does not hold for this client, as a licensed
        professional said: demands, positions or instructions of the table.
    advised_by, since: who was asked, and when.
    review: when to ask again.
    """

    care: Words
    side: Side | None = None
    at_most: Degrees | None = Field(None, alias="at most")
    without: ListOf[Words] = ()
    advised_by: Words | None = Field(None, alias="advised by")
    since: Date | None = None
    review: Date | None = None

    @model_validator(mode="after")
    def _said_by_somebody(self) -> CareChoice:
        if (self.advised_by is None) != (self.since is None):
            raise ValueError("'advised by' and 'since' belong together; write who said so and on which day")
        if self.without and self.advised_by is None:
            raise ValueError("'without' needs somebody who said so; write 'advised by:' and 'since:' beside it")
        return self


def _care_by_name(value: object) -> object:
    return {"care": value} if isinstance(value, str) else value


CareList = ListOf[
    Annotated[CareChoice, BeforeValidator(_care_by_name, json_schema_input_type=Words | CareChoice)]
]


# --- the care table ------------------------------------------------------------


class CareLimit(Limit):
    """A limit of the care table.

    why: what it guards against, for the trainer.
    source: where that is written, "common practice" or "from memory".
    """

    why: Words
    source: Words


class CareTold(Model):
    """An instruction on the sheet.  say: its key in the language files."""

    say: Code
    source: Words


class CareAsk(Model):
    """Who must be asked first.

    whom: the licensed professional.
    before: "any sheet" makes none until the answer stands in the client's
        file; "the first session" reminds the trainer.
    talk_over: what to go through with the client by voice.
    """

    whom: Words
    before: Literal["any sheet", "the first session"]
    talk_over: Words | None = Field(None, alias="talk over")
    source: Words


class CareRule(Model):
    """A condition or a circumstance and what it asks of the training.

    names: words for it in each language, so that none of them is ever printed.
    ask: who must be asked first.
    limits: demands and positions to leave out or to bound.
    tells: what the sheet tells the client to do.
    knee: the client's file gives the deepest bend of a knee.
    weaker_side: the client's file gives the side that is weaker and goes first.
    """

    names: MapOf[ListOf[Words]]
    ask: CareAsk
    limits: ListOf[CareLimit] = ()
    tells: ListOf[CareTold] = ()
    knee: YesNo = False
    weaker_side: YesNo = Field(False, alias="weaker side")


class CareTable(Model):
    """All of care.yaml.

    opposite: pairs of instructions that cannot both be followed.
    """

    cares: MapOf[CareRule]
    opposite: ListOf[ListOf[Code]] = ()


class BestSet(Model):
    """A hard set the client did: the base of an estimated maximum.

    in_reserve: repetitions that were left.
    """

    load: LoadText
    reps: Annotated[int, *_whole(1, 200, "10")]
    in_reserve: Whole = Field(0, alias="in reserve")


class Screening(Model):
    """What came of the questions on health before the first session.

    outcome: "cleared" by whoever may clear, or "referred" to them.
    """

    date: Date
    by: Words
    outcome: Literal["cleared", "referred"]


class ClientFacts(Model):
    """A client file.

    code: short code, on every page instead of a surname.
    name: as the client likes to be called; it stands on the sheets.
    language: of the sheets.
    units: in which the client thinks of weights.
    place: a gym has the usual kit, a home what "kit" lists.
    level: 1, 2 or 3, for plans with levels.
    minutes: time that the client has.
    guide_dog: the sheet reminds of the dog's corner.
    weaker_side: it goes first.
    log_by: how the client notes what was done.
    effort_cap: the hardest that is asked, 0 to 10.
    limits: what this client's body asks for.
    care: conditions and circumstances, by their names in the care table;
        never printed.
    plans: which plans the client follows.
    best_sets: by exercise id.
    hands: which hands can grip; "right" or "left" for one-handed clients.
    pace: how kit is found between exercises; sets the change-over time
        (common practice: 30 s sighted, 75 s by touch).
    other_side: the second side "written out" in full or told "short".
    pictures: "liked" lets likenesses from sighted life into the sheet.
    touch: how the coach may teach: "words only", "client feels coach",
        "coach guides client".
    knows: ids of exercises that the client knows by heart; the sheet tells
        them shortly, without kit, start and movement.
    loads: what the trainer asks for, by exercise id; goes before the plan's.
    private: the trainer's notes, on health too.  Never printed, never logged.
    """

    code: Code
    name: Words
    age: Age | None = None
    language: Code = "en"
    forms: Forms
    units: Literal["kg", "lb"]
    place: Literal["home", "gym"] = "home"
    level: LevelNumber = 1
    minutes: SomeSeconds | None = None
    pace: Literal["sighted", "by touch"] = "sighted"
    other_side: Literal["written out", "short"] = Field("written out", alias="other side")
    pictures: Literal["liked", "none"] = "none"
    touch: Literal["words only", "client feels coach", "coach guides client"] = "words only"
    guide_dog: YesNo = Field(False, alias="guide dog")
    hands: Literal["both", "left", "right"] = "both"
    weaker_side: Side | None = Field(None, alias="weaker side")
    log_by: Literal["pen", "slate", "voice", "keys"] = Field("pen", alias="log by")
    effort_cap: EffortCap | None = Field(None, alias="effort cap")
    kit: Kit = Kit()
    limits: ListOf[Limit] = ()
    care: CareList = ()
    plans: ListOf[PlanChoice] = Field(min_length=1)
    knows: ListOf[Code] = ()
    loads: MapOf[OneOrTwoSided] = {}
    best_sets: MapOf[BestSet] = Field({}, alias="best sets")
    screening: Screening | None = None
    private: LongWords | None = None


class Client(Model):
    """path: the file, for messages.  lines: first line of each top-level key."""

    path: str
    facts: ClientFacts
    lines: dict[str, int] = {}


# --- studio and logs ---------------------------------------------------------


class StudioFacts(Model):
    """studio.yaml.

    format: version of the folder's format, 1 today (see reading/upgrades.py).
    name: of the studio.
    coach: who writes the plans.
    phone: whom the client calls with a question.
    emergency: the local number.
    """

    format: Annotated[int, *_whole(1, 9999, "1")] = 1
    name: Words
    coach: Words
    phone: Words | None = None
    emergency: Words


class LogLine(Model):
    """One line of logs/CLIENT.csv: one exercise, or "session", on one day.

    What the client did not say, or said so that one must ask, is None, () or
    "": unknown is not zero.
    line: in the file, from 1; the header is line 1.
    exercise: its id, "session" for the whole session, "" when not known.
    weight: as stamped, of one piece: of each of a pair.
    reps: per set, last one last; one number alone is the last set.
    seconds: of the exercise, or of the whole session.
    effort: 0 to 10.
    raw: what came in, word for word.  One message may fill several lines;
        each of them carries the whole of it.
    reps of (0,): the exercise was skipped, which is not the same as unknown.
    metres: walked with a weight, all sets together.
    rounds: done in "as many rounds as possible".
    warning: pain or another sign to stop, in the client's words.  Until the
        trainer has written an answer beside it, no new weight is worked out.
    answer: what the trainer decided about the warning.
    corrected: the day on which another line took this one's place; such a
        line is kept in the file and counts for nothing.
    """

    line: int
    date: datetime.date | None
    plan: str
    version: int | None
    exercise: str
    side: Side | None
    weight: amounts.Mass | None
    reps: tuple[int, ...]
    seconds: int | None
    effort: int | None
    note: str
    raw: str
    metres: int | None = None
    rounds: int | None = None
    warning: str = ""
    answer: str = ""
    corrected: datetime.date | None = None


class Studio(Model):
    """All that one studio folder says.

    exercises: (id, language) to text; starter texts and the studio's own.
    plans: (plan, version) to plan.
    logs: by client code; lines that were corrected are left out.
    """

    facts: StudioFacts
    exercises: dict[tuple[str, str], Exercise]
    plans: dict[tuple[str, int], Plan]
    clients: dict[str, Client]
    logs: dict[str, tuple[LogLine, ...]]
