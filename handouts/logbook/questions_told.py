"""Readers' questions, told to the trainer."""

from __future__ import annotations

import datetime
from pathlib import Path

import click

from handouts.logbook.asked import all_questions, answer_question, open_questions, texts_by_questions


def tell(folder: Path, client: str | None, everything: bool) -> int:
    """Open questions beside their lines; the answered ones too on request."""
    found = [one for one in open_questions(folder) if client in (None, one.question.client)]
    for one in found:
        click.echo(str(one))
        if one.question.words:
            click.echo(f"  the line: {one.question.words}")
    if everything:
        for done in all_questions(folder):
            if done.answered and client in (None, done.client):
                click.echo(
                    f"answered {done.answered}: question {done.client} {done.number}, {done.exercise}: {done.question} Answer: {done.answer}"
                )
    if not found:
        click.echo("No reader's question is open.")
    return 1 if found else 0


def by_text(folder: Path, client: str | None) -> int:
    """Which texts raise most questions."""
    counted = texts_by_questions(one for one in all_questions(folder) if client in (None, one.client))
    for exercise, count, waiting in counted:
        click.echo(f"{exercise}: {count} question{'' if count == 1 else 's'}, {waiting} open")
    if not counted:
        click.echo("No reader has asked anything yet.")
    return 0


def mark(folder: Path, client: str, number: int, answer: str, today: datetime.date) -> int:
    """Mark one as answered."""
    done = answer_question(folder, client, number, answer, today)
    click.echo(f"Answered: question {client} {done.number}, {done.exercise}: {done.question} Answer: {done.answer}")
    return 0
