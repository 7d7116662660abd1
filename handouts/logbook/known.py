"""What the studio knows of a client when a message comes in."""

from __future__ import annotations

import datetime

from handouts.fitting.fit import fit
from handouts.logbook.message import Known, PlanVersion
from handouts.logbook.names import names_for
from handouts.models import Client, LogLine, Studio


def known_of(
    studio: Studio,
    client: Client,
    history: tuple[LogLine, ...],
    today: datetime.date,
    waiting: int = 0,
    before: Known | None = None,
) -> Known:
    """What the studio knows of a client: every version of their plans fitted,
    and of plans that their log names.

    before: what was known of the same studio, client and day a moment ago; its
        sessions and names hold still, and are not worked out again.
    """
    chosen = {choice.plan: choice.version for choice in client.facts.plans}
    codes = dict.fromkeys((*chosen, *(line.plan for line in history if line.plan)))
    fitted = before.sessions if before else {}
    sessions = {
        (plan, version): fitted.get((plan, version))
        or fit(client, studio.plans[plan, version], studio.exercises, studio.facts, None, today)
        for plan in codes
        for version in sorted(number for code, number in studio.plans if code == plan)
    }
    current: list[PlanVersion] = [
        (plan, version or max(number for code, number in studio.plans if code == plan))
        for plan, version in chosen.items()
    ]
    names = before.names if before else names_for(studio.exercises, client.facts.language)
    return Known(client, sessions, tuple(current), studio.exercises, history, today, names, waiting)
