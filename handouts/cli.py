"""The commands: parse, call a stage, print whole lines, exit.

Everything heavy is imported inside the command that needs it, so that help
and the wording checker start at once and a missing library for one form
cannot stop another.
"""

from __future__ import annotations

import gc
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, NoReturn

import click

from handouts import __version__
from handouts.errors import HandoutsError

if TYPE_CHECKING:
    import datetime

    from handouts.coaching.standing import Aim
    from handouts.reading.schemas import FileKind


@click.group(context_settings={"help_option_names": ["-h", "--help"], "max_content_width": 80})
@click.version_option(__version__, message="handouts %(version)s")
def main() -> None:
    """Strength training hand-outs in large print, for a screen reader, in braille.

    Start with: handouts start FOLDER, then: handouts make --studio FOLDER
    """


def _stop(message: str, status: int = 2) -> NoReturn:
    click.echo(message, err=True)
    sys.exit(status)


def _today() -> datetime.date:
    """Today, or the day of SOURCE_DATE_EPOCH (reproducible-builds.org)."""
    import datetime

    epoch = os.environ.get("SOURCE_DATE_EPOCH")
    if not epoch:
        return datetime.date.today()
    try:
        return datetime.datetime.fromtimestamp(int(epoch), datetime.UTC).date()
    except (ValueError, OverflowError, OSError):
        _stop(
            f"SOURCE_DATE_EPOCH: '{epoch}' is no moment; "
            "set it to whole seconds since 1970, such as 1862531200, or take it out of the environment"
        )


@main.command()
@click.argument("folder", type=click.Path(path_type=Path))
def start(folder: Path) -> None:
    """Lay out a new studio in FOLDER, with one example client to try."""
    from handouts.making.start import start_studio

    try:
        written = start_studio(folder)
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))
    for path in written:
        click.echo(f"{path}: written")
    click.echo(f"The studio is ready. Make its first sheets with: handouts make --studio {folder}")


@main.command()
@click.argument("names", nargs=-1, metavar="[CLIENT or PLAN ...]")
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--out", type=click.Path(path_type=Path), help="Where to put what is made; else the studio's out folder.")
@click.option("--as", "forms", metavar="FORM,...", help="Forms to make: print, screen, braille, epub, text; else as each client reads.")
@click.option("--report", type=click.Choice(["text", "json"]), default="text", show_default=True, help="How to tell what was made.")
@click.option("--quiet", is_flag=True, help="Say only what needs you.")
@click.option("--afresh", is_flag=True, help="Make everything, also what did not change.")
@click.option("--why", is_flag=True, help="Say of each file why it was made.")
@click.option("--jobs", type=click.IntRange(1, 256), help="Processes to use; else as many as there are cores.")
@click.option("--cluster", metavar="ADDRESS", help="Use the workers of the Dask scheduler at ADDRESS.")
def make(
    names: tuple[str, ...],
    studio: Path | None,
    out: Path | None,
    forms: str | None,
    report: str,
    quiet: bool,
    afresh: bool,
    why: bool,
    jobs: int | None,
    cluster: str | None,
) -> None:
    """Make the sheets of all clients, or of those named.

    Exit status: 0 all made; 1 made, but something needs your eye; 2 a fault
    in a file, so that nothing was made for at least one client.
    """
    from contextlib import closing

    from handouts.making.opening import point_out_open
    from handouts.making.workers import workers_for

    chosen = _forms(forms)
    try:
        folder = _studio(studio)
        for line in point_out_open(folder):
            click.echo(line, err=True)
        with closing(workers_for(jobs, cluster)) as workers:
            # Other processes start while this one still loads what it needs.
            workers.get_ready()
            from handouts.making import Asked
            from handouts.making.report import tell

            asked = Asked(folder, out or folder / "out", _today(), names, chosen, afresh)
            status = tell(asked, workers, report, quiet, why)
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))
    sys.exit(status)


@main.command()
@click.argument("client")
@click.option("--to", type=click.Path(path_type=Path), required=True, help="The folder to copy to, outside the studio.")
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--out", type=click.Path(path_type=Path), help="Where the sheets are; else the studio's out folder.")
def share(client: str, to: Path, studio: Path | None, out: Path | None) -> None:
    """Copy CLIENT's finished sheets out of the studio, to be given away.

    Only finished sheets go out, after a look at what each file says about
    itself. Exit status: 0 copied; 2 nothing was copied.
    """
    from handouts.making.share import share as copies

    try:
        folder = _studio(studio)
        for copy in copies(folder, out or folder / "out", client, to):
            click.echo(f"{copy}: copied")
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))


@main.command()
@click.argument("paths", nargs=-1, metavar="[PATH ...]")
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--language", type=click.Choice(["en", "fr"]), help="Of all texts; else each text says its own.")
@click.option("--report", type=click.Choice(["text", "json", "sarif"]), default="text", show_default=True, help="How to tell what was found.")
@click.option("--explain", metavar="KIND", help="Say what a kind of finding is, with examples; 'all' for every kind.")
@click.option("--serve", is_flag=True, help="Check while you type: talk to an editor over standard input and output.")
def check(paths: tuple[str, ...], studio: Path | None, language: str | None, report: str, explain: str | None, serve: bool) -> None:
    """Find words that only work for someone who is watching.

    PATH is a file, a folder, or - for standard input; without one, the
    exercise texts of the studio, else the working folder.

    A comment in a text lets one finding stand: <!-- allow KIND: your reason -->.
    The file wording.yaml of a studio holds its known words, the strength that
    makes the exit status 1 (fails at), what is turned off and why, the language.

    Exit status: 0 nothing to change; 1 findings; 2 a file that cannot be
    checked, so that only the others were.
    """
    # A run of a second makes no cycles worth looking for, and looking costs a tenth of it.
    gc.disable()
    try:
        from handouts.wording import command

        if explain is not None:
            sys.exit(command.explain(explain))
        if serve:
            gc.enable()
            sys.exit(command.serve())
        status = command.check(paths, studio, language or "", report)
        if report == "text":
            _tell_questions(studio, paths)
        sys.exit(status)
    finally:
        gc.enable()


def _tell_questions(studio: Path | None, paths: tuple[str, ...]) -> None:
    start = (studio or Path.cwd()).resolve()
    folder = next((place for place in (start, *start.parents) if (place / "studio.yaml").is_file()), None)
    if folder is not None and (folder / "questions").is_dir():
        from handouts.logbook.beside import tell_open_questions

        tell_open_questions(folder, paths)


@main.command()
@click.argument("client")
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--out", type=click.Path(path_type=Path), help="Where to put the pages; else the studio's out folder.")
@click.option("--report", type=click.Choice(["text", "json"]), default="text", show_default=True, help="How to tell what was found.")
def proof(client: str, studio: Path | None, out: Path | None, report: str) -> None:
    """Show CLIENT's braille beside the print words, and every word that reads back differently.

    Exit status: 0 every word reads back; 1 there are words to look at; 2 a
    fault in a file, or no liblouis.
    """
    import json

    from handouts.making.proof import make_proofs

    try:
        folder = _studio(studio)
        proved = []
        for one in make_proofs(folder, out or folder / "out", client, _today()):
            proved.append(one)
            if report == "text":
                click.echo(one.told())
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))
    if report == "json":
        click.echo(json.dumps([one.record() for one in proved], ensure_ascii=False, indent=1))
    sys.exit(1 if any(one.proof.faults for one in proved) else 0)


@main.command()
@click.argument("client")
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--text", metavar="WORDS", help="What the client sent, word for word.")
@click.option("--from", "source", metavar="FILE", help="A saved log, a text or a CSV file; - for standard input.")
@click.option("--date", metavar="DATE", help="Day of the session, such as 2029-01-08.")
@click.option("--plan", metavar="PLAN", help="Plan of the sheet; else the client's own.")
@click.option("--version", type=int, metavar="N", help="Version on the sheet; else the current one.")
@click.option("--exercise", metavar="NAME", help="Number on the sheet, name or id.")
@click.option("--side", type=click.Choice(["left", "right"]), help="Side of the weight and the counts.")
@click.option("--weight", metavar="WEIGHT", help="Such as '16 kg'.")
@click.option("--reps", metavar="COUNTS", help="One number a set, such as 12/12/14.")
@click.option("--seconds", metavar="COUNTS", help="Seconds in each set, where the sheet asks for them.")
@click.option("--time", metavar="TIME", help="Of the whole session: '24 min', 24:30, 1:05:00.")
@click.option("--effort", metavar="N", help="Of the session, 0 to 10.")
@click.option("--note", metavar="WORDS", help="A note.")
@click.option("--warning", metavar="WORDS", help="Pain or another warning sign, and where.")
@click.option("--question", metavar="WORDS", help="The reader's question about the instruction.")
@click.option("--correct", type=int, metavar="LINE", help="Put what is given in place of a line, which is kept.")
@click.option("--answer", nargs=2, type=(int, str), metavar="LINE WORDS", help="Write your decision beside a warning sign.")
@click.option("--list", "listing", is_flag=True, help="Tell the log line by line, with numbers.")
@click.option("--warnings", is_flag=True, help="Tell the warning signs that wait for your answer.")
@click.option("--later", is_flag=True, help="Ask nothing now; what is in doubt waits.")
def log(client: str, studio: Path | None, text: str | None, source: str | None, date: str | None, plan: str | None,
        version: int | None, exercise: str | None, side: str | None, correct: int | None,
        answer: tuple[int, str] | None, listing: bool, warnings: bool, later: bool, **said: str | None) -> None:
    """Take in what CLIENT did: by question and answer, in one line, from a file.

    Without words or a file it goes on with what waits, else it asks for one
    session, one thing at a time. What is in doubt is asked about, and nothing
    of a message is stored before its questions are answered.

    Exit status: 0 stored; 1 something waits for answers; 2 a fault, and
    nothing was written.
    """
    from handouts.logbook import command, options

    try:
        folder = _studio(studio)
        if answer is not None:
            sys.exit(command.answer(folder, client, *answer))
        if listing or warnings:
            sys.exit(command.list_lines(folder, client, warnings))
        asked = options.asked(client, text, source, date, plan, version, exercise, side, correct, not later, said)
        sys.exit(command.log(folder, asked, _today()))
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))


@main.command()
@click.argument("client", required=False)
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--all", "everything", is_flag=True, help="Tell the answered ones too.")
@click.option("--by-text", is_flag=True, help="Tell which texts raise most questions.")
@click.option("--answered", nargs=2, type=(int, str), metavar="N WORDS", help="Mark CLIENT's question N as answered.")
def questions(client: str | None, studio: Path | None, everything: bool, by_text: bool, answered: tuple[int, str] | None) -> None:
    """Tell what readers asked about the exercise texts, of all clients or one."""
    from handouts.logbook import questions_told

    try:
        folder = _studio(studio)
        if answered is not None:
            if client is None:
                _stop("--answered needs the client whose question it is; write: handouts questions CLIENT --answered N WORDS")
            sys.exit(questions_told.mark(folder, client, *answered, _today()))
        sys.exit(questions_told.by_text(folder, client) if by_text else questions_told.tell(folder, client, everything))
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))


@main.command()
@click.argument("client")
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--out", type=click.Path(path_type=Path), help="Where to put what is made; else the studio's out folder.")
@click.option("--as", "forms", metavar="FORM,...", help="Forms to make, such as print,braille; else as the client reads.")
def progress(client: str, studio: Path | None, out: Path | None, forms: str | None) -> None:
    """Tell how CLIENT gets on, and make the report in the forms they read.

    Exit status: 0 made; 1 nothing is logged yet; 2 a fault, or a form that
    could not be made.
    """
    from handouts.progress import command

    chosen = _forms(forms)
    try:
        folder = _studio(studio)
        sys.exit(command.tell_progress(folder, out or folder / "out", client, chosen, _today()))
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))


@main.command(name="next")
@click.argument("client", required=False)
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
@click.option("--aim", type=click.Choice(["faster", "heavier", "more-reps", "easier", "hold"]), default="heavier", show_default=True, help="What to change, where the log has earned it.")
@click.option("--plan", metavar="PLAN", default="", help="Of which plan, where the client follows several.")
@click.option("--all", "every", is_flag=True, help="Make every change that was earned, in place of one.")
@click.option("--show", is_flag=True, help="Show the file in place of writing it.")
@click.option("--rules", is_flag=True, help="Tell the rules, with their sources.")
def next_(client: str | None, studio: Path | None, aim: Aim, plan: str, every: bool, show: bool, rules: bool) -> None:
    """Write the next version of CLIENT's plan, for you to read and change.

    Each change has its reason, with the line of the log and the rule. The
    version is for this client alone, and no file is written over.

    Exit status: 0 written; 1 nothing written, since nothing was earned or a
    warning sign waits for your answer; 2 a fault.
    """
    from handouts.progress import command

    try:
        if rules:
            sys.exit(command.tell_rules())
        if client is None:
            _stop("no client is named; write: handouts next CLIENT")
        sys.exit(command.propose_next(_studio(studio), client, aim, _today(), plan, every, show))
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))


@main.command()
@click.option("--studio", type=click.Path(path_type=Path), help="The studio folder; else the working folder and above.")
def desk(studio: Path | None) -> None:
    """Tell everything that waits for you, the gravest first.

    Warning signs, faults in files, logs that are not settled, readers'
    questions, and what needs your eye in the next sheets. Exit status: 0
    nothing waits; 1 something does; 2 no studio.
    """
    from handouts.logbook.desk import waiting_at

    try:
        waiting = list(waiting_at(_studio(studio), _today()))
    except (HandoutsError, OSError) as problem:
        _stop(_told(problem))
    for line in waiting:
        click.echo(line)
    click.echo(f"{len(waiting)} thing{'' if len(waiting) == 1 else 's'} on your desk." if waiting else "Nothing waits for you.")
    sys.exit(1 if waiting else 0)


@main.command()
@click.argument("kind", type=click.Choice(["exercise", "exercise words", "plan", "client", "studio"]))
def schema(kind: FileKind) -> None:
    """Print the JSON Schema of a KIND of file, for an editor that helps while you type.

    "exercise" is the data at the top of a text; "exercise words" that of a
    text in another language.
    """
    import json

    from handouts.reading.schemas import json_schema

    click.echo(json.dumps(json_schema(kind), ensure_ascii=False, indent=1))


def _forms(text: str | None) -> tuple[str, ...]:
    from handouts.forms import FORMS

    names = tuple(name.strip() for name in text.split(",") if name.strip()) if text is not None else ()
    if text is not None and not names:
        _stop("--as names no form; write one or more of: " + ", ".join(FORMS))
    for name in names:
        if name not in FORMS:
            _stop(f"--as: no form '{name}'; write one or more of: {', '.join(FORMS)}, with commas between")
    return names


def _studio(given: Path | None) -> Path:
    from handouts.making.opening import open_studio

    try:
        folder, told = open_studio(given if given is not None else Path.cwd())
    except OSError as problem:
        _stop(_told(problem))
    for line in told:
        click.echo(line, err=True)
    return folder


def _told(problem: HandoutsError | OSError) -> str:
    """A message for the user: what the disk refuses is told with its place and a way on."""
    if isinstance(problem, BrokenPipeError):
        raise problem  # the reader, such as `head`, has enough; Click ends in silence
    if not isinstance(problem, OSError):
        return str(problem)
    place = problem.filename2 or problem.filename
    return f"{place or 'the disk'}: not written: {problem.strerror or problem}; free the place or name another, and run this again"


if __name__ == "__main__":
    main()
