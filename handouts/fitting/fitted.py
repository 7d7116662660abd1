"""A session fitted to one client: what `fit` decides and the sheets tell.

Plain frozen data between the two halves of this stage: `fit` chooses, and
`sheets` puts the choice into words of the client's language.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal, NamedTuple, TypeAlias

from handouts.amounts import AskedLoad, Dose, Effort, Mass, Pieces, Tempo
from handouts.models import Client, Demand, Exercise, KitName, Level, Plan, Position, Side, StudioFacts


@dataclass(frozen=True)
class Remark:
    """One thing that the trainer should know about a fitting, never printed
    on the sheet.

    strength: "note" (done as the files say) or "eye" (needs the trainer's eye:
        a substitution was refused, a load could not be matched, a review date
        has passed; the exit status becomes 1).
    exercise: id of the exercise in the plan, or "" for the whole session.
    what: a full sentence in English, saying what, where and what to do next.
    """

    strength: Literal["note", "eye"]
    exercise: str
    what: str


@dataclass(frozen=True)
class FittedLoad:
    """The weight for one side or for both.

    side: None where one load serves both sides or the whole body.
    asked: what plan or trainer asked for; None when nothing was.
    mass: the chosen weight as stamped; None for bodyweight and bands, where
        nothing was asked for (the client chooses), and where `asked` cannot be
        met with the client's kit (the sheet then says to ask the trainer).
    held: where it is; "each hand" is one weight of `mass` in each hand.
    band: the band's name, or "".
    plates: on each end of a handle that has to be set up; () for a dumbbell
        as it is, and for a bare handle.
    withheld: no weight is named before the trainer has answered a warning
        sign; the sheet then says to ask the trainer.
    """

    side: Side | None
    asked: AskedLoad | None
    mass: Mass | None
    held: Literal["each hand", "both hands", "one hand", "cuff", "none"]
    band: str = ""
    plates: tuple[Pieces, ...] = ()
    withheld: bool = False

    @property
    def chosen(self) -> str:
        """What was taken for what was asked, in the words of a file."""
        if self.withheld:
            return "withheld until a warning sign is answered"
        if self.band:
            return f"band {self.band}"
        if self.mass is None:
            return "none"
        return f"{self.mass} {self.held}"


@dataclass(frozen=True)
class FittedExercise:
    """One exercise as this client will do it.

    number: counts from 1 through the whole session (warm-up and cool-down not
        counted, 0 there).
    planned: id in the plan; differs from `exercise.id` after a substitution.
    planned_title: its title in the client's language.
    option: id of the easier or harder option in use, or None.
    reason: why it was changed: "kit", "limit", "hands", "level" or "" - told
        to the trainer in a remark, on the sheet only as "in place of ...".
    sides: ("left", "right") in the order in which to do them, one of them for
        a one-handed client, () where sides are together.
    alternating: side by side instead of one side after the other.
    dose: reps, seconds or metres; sets and rounds belong to the group.  Its
        `counted` is settled here: "" where sides are together or where one
        side alone works, otherwise "each side" or "in all".  None in timed
        intervals.
    cues: demands for which the sheet must carry a caution line here.
    kit: what it really uses, alternatives settled ("bench or chair" is one
        of them); step_height: of the step in use, centimetres.
    seconds: how long one set (all sides) takes.
    """

    number: int
    planned: str
    planned_title: str
    exercise: Exercise
    option: str | None
    reason: Literal["kit", "limit", "hands", "level", ""]
    position: Position
    sides: tuple[Side, ...]
    alternating: bool
    dose: Dose | None
    loads: tuple[FittedLoad, ...]
    effort: Effort | None
    tempo: Tempo | None
    cues: tuple[Demand, ...]
    kit: tuple[KitName, ...]
    step_height: Decimal | None
    seconds: int


@dataclass(frozen=True)
class FittedGroup:
    """Exercises that are done as one structure.

    structure: as in the plan file.
    rounds: sets of straight sets, rounds of the others; 0 where time decides.
    rest_inside: seconds between exercises or stations; rest_after: between
        sets or rounds.  work: seconds of work in timed intervals, else 0.
    time: seconds for "as many rounds as possible" and "every minute", else 0.
    seconds: the whole group, without a change-over.
    """

    structure: Literal[
        "straight sets", "superset", "circuit", "intervals", "as many rounds as possible", "every minute"
    ]
    exercises: tuple[FittedExercise, ...]
    rounds: int
    work: int
    rest_inside: int
    rest_after: int
    time: int
    seconds: int


class Instruction(NamedTuple):
    """What this client does throughout: a key of the language files and its
    values as (name, value) pairs.  The sheet gives the instruction, never the
    reason for it.

    Keys without values: keep_head_above_heart, keep_breathing, no_jarring,
    not_flat_on_back, no_kneeling, nothing_overhead, keep_support_in_reach,
    rest_the_grip, no_deep_knee_bend, no_weight_over_face, stay_seated, and
    what the care table tells.
    Keys with values: knee_not_beyond (side "left" or "right"; degrees of bend
    from straight, "90"), effort_not_above (cap, "5" on the scale from 0 to
    10), nothing_heavier (mass, "5 kg", all that is held at once).
    """

    key: str
    values: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True)
class FittedSession:
    """Everything that the three sheets of one client and one plan need.

    change_over: seconds for one change of kit and place.
    main_seconds: the groups with the change-overs between them, and one more
        change-over for each time that a handle gets other plates.
    total_seconds: with warm-up and cool-down, as the rules reckon.
    expected_seconds: the same at the client's own pace, where the log tells it.
    instructions: what this client does throughout, each only once.
    changes: what changed since the last version, in the order of the sheet;
        () for version 1.
    effort_cap: 0 to 10, or None.
    stopped: why no sheet may be made of this, each a full sentence; () when
        nothing stands against it.
    """

    studio: StudioFacts
    client: Client
    plan: Plan
    level: Level
    warm_up: tuple[FittedExercise, ...]
    warm_up_seconds: int
    groups: tuple[FittedGroup, ...]
    cool_down: tuple[FittedExercise, ...]
    cool_down_seconds: int
    change_over: int
    main_seconds: int
    total_seconds: int
    expected_seconds: int
    instructions: tuple[Instruction, ...]
    changes: tuple[Change, ...]
    effort_cap: int | None
    remarks: tuple[Remark, ...]
    stopped: tuple[str, ...] = ()


ChangeValue: TypeAlias = Dose | tuple[FittedLoad, ...] | int | str | None


@dataclass(frozen=True)
class Change:
    """One difference between two versions of a plan, for this client.

    title: the exercise's title in the client's language; "" for the session;
        for changes of a group the titles of its exercises, joined by ", ".
    before, after: values that the language files can word:
        "added": None, then the Dose (None in timed intervals);
        "removed": None, None;
        "dose": Dose (None in timed intervals);
        "load": the loads, tuple[FittedLoad, ...];
        "rounds": int (sets of straight sets; 0 where time decides);
        "rest": int, seconds between sets or rounds; "rest_inside": int,
        seconds between exercises; "work": int, seconds of work in timed
        intervals; "time": int, seconds of a whole group;
        "option": the option's title in the client's language, "" for none;
        "note": None, then the trainer's own words.
    """

    kind: Literal["added", "removed", "dose", "load", "rounds", "rest", "rest_inside", "work", "time", "option", "note"]
    title: str
    before: ChangeValue
    after: ChangeValue
