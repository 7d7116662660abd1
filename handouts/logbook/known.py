"""What the studio knows of a client when a message comes in."""

from __future__ import annotations

import datetime

from handouts.fitting.fit import fit
from handouts.logbook.message import Known, PlanVersion
from handouts.models import Client, LogLine, Studio


def known_of(
    studio: Studio, client: Client, history: tuple[LogLine, ...], today: datetime.date, waiting: int = 0
) -> Known:
    """What the studio knows of a client: every version of their plans fitted,
    and of plans that their log names."""
    chosen = {choice.plan: choice.version for choice in client.facts.plans}
    codes = dict.fromkeys((*chosen, *(line.plan for line in history if line.plan)))
    sessions = {
        (plan, version): fit(client, studio.plans[plan, version], studio.exercises, studio.facts, None, today)
        for plan in codes
        for version in sorted(number for code, number in studio.plans if code == plan)
    }
    current: list[PlanVersion] = [
        (plan, version or max(number for code, number in studio.plans if code == plan))
        for plan, version in chosen.items()
    ]
    return Known(client, sessions, tuple(current), studio.exercises, history, today, waiting)
