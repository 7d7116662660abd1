"""Small clients, plans and texts for tests, through the program's own models.

Values are written as a trainer writes them in a file, so they pass the same
readers.
"""

from __future__ import annotations

import datetime
from typing import Any

from handouts.fitting.fit import fit
from handouts.fitting.fitted import FittedExercise, FittedSession
from handouts.models import Client, ClientFacts, Exercise, ExerciseFacts, LogLine, Part, Plan, PlanFacts, StudioFacts

STUDIO = StudioFacts(name="A room", coach="A coach", emergency="112")
TODAY = datetime.date(2029, 1, 8)
SCREENED = {"date": "2029-01-02", "by": "A coach", "outcome": "cleared"}


def a_client(**facts: Any) -> Client:
    usual: dict[str, Any] = {
        "code": "T1",
        "name": "Test",
        "forms": {"screen": {}},
        "units": "kg",
        "plans": [{"plan": "T"}],
        "screening": SCREENED,
    }
    given = {key.replace("_", " "): value for key, value in facts.items()}
    return Client(path="clients/T1.yaml", facts=ClientFacts.model_validate(usual | given))


def an_exercise(name: str, breathing: bool = False, harder: tuple[str, ...] = (), **facts: Any) -> Exercise:
    usual: dict[str, Any] = {"title": name.replace("-", " ").capitalize(), "positions": ["standing"], "sides": "together", "regions": ["legs"]}
    given = {key.replace("_", " "): value for key, value in facts.items()}
    parts: list[dict[str, Any]] = []
    if breathing:
        parts.append({"name": "Breathing", "blocks": [{"text": "Breathe out.", "line": 9}], "line": 8})
    if harder:
        items = [{"text": f"**{option}.** More.", "line": 12, "option": option} for option in harder]
        parts.append({"name": "Harder", "blocks": [{"ordered": False, "items": items}], "line": 11})
    return Exercise(
        id=name,
        path=f"exercise_texts/{name}.md",
        starter=False,
        facts=ExerciseFacts.model_validate(usual | given),
        parts=tuple(Part.model_validate(part) for part in parts),
    )


def straight_sets(name: str, **work: Any) -> dict[str, Any]:
    usual = {"structure": "straight sets", "exercise": name, "sets": "3", "dose": "10 reps", "rest": "60 s"}
    return usual | work


def a_plan(*session: dict[str, Any], version: int = 1, **facts: Any) -> Plan:
    usual: dict[str, Any] = {"plan": "T", "version": str(version), "title": "Test", "date": "2029-01-08", "session": list(session)}
    given = {key.replace("_", " "): value for key, value in facts.items()}
    return Plan(path=f"plans/T-v{version}.yaml", facts=PlanFacts.model_validate(usual | given))


def fit_to(
    client: Client,
    plan: Plan,
    *exercises: Exercise,
    previous: Plan | None = None,
    today: datetime.date = TODAY,
    history: tuple[LogLine, ...] = (),
) -> FittedSession:
    texts = {(exercise.id, exercise.facts.language): exercise for exercise in exercises}
    return fit(client, plan, texts, STUDIO, previous, today, history)


def only(session: FittedSession) -> FittedExercise:
    ((exercise,),) = (group.exercises for group in session.groups)
    return exercise


def eyes(session: FittedSession) -> list[str]:
    return [remark.what for remark in session.remarks if remark.strength == "eye"]


def notes(session: FittedSession) -> list[str]:
    return [remark.what for remark in session.remarks if remark.strength == "note"]
