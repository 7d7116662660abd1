"""Warning signs and reader's questions, each with the exercise it is about."""

from __future__ import annotations

from handouts.logbook.care import concerned, is_stop_sign, names_a_joint, warning_notice
from handouts.logbook.message import SESSION, Heard, Proposal, TextQuestion
from handouts.logbook.setting import DROP, UNKNOWN, Setting
from handouts.logbook.which import named
from handouts.models import LogLine


def with_warnings(setting: Setting, heard: Heard, lines: list[LogLine]) -> list[LogLine]:
    exercises = tuple(setting.exercises.values())
    for at, warning in enumerate(heard.warnings, 1):
        frozen = list(concerned(warning.words, exercises, setting.words))
        stop_sign = is_stop_sign(warning.words, setting.words)
        frozen += _named_in_warning(setting, at, warning.words, warning.exercise)
        if stop_sign or (not frozen and not names_a_joint(warning.words, setting.words)):
            frozen = []
        ids = tuple(dict.fromkeys(frozen))
        setting.asking.tell(warning_notice(warning.words, ids, stop_sign))
        for id in ids or (SESSION,):
            lines = _warned(setting, lines, id, warning.words)
    return lines


def _warned(setting: Setting, lines: list[LogLine], id: str, words: str) -> list[LogLine]:
    """The lines with a warning on one exercise; a line of its own where
    the exercise has none."""
    at = next((at for at, line in enumerate(lines) if line.exercise == id), None)
    if at is None:
        return [*lines, setting.line(id).model_copy(update={"warning": words})]
    before = lines[at].warning
    both = f"{before}; {words}" if before and words not in before else words
    return [*lines[:at], lines[at].model_copy(update={"warning": both}), *lines[at + 1 :]]


def _named_in_warning(setting: Setting, at: int, words: str, name: str) -> list[str]:
    """Exercises that a warning names; what it may name is asked about."""
    if not name:
        return []
    ids = setting.ids
    if name in ids or name.isdigit():
        return [id for id in (named(setting, name),) if id]
    said = setting.names.of_text(name)
    within = setting.names.within(said, ids)
    everyday = next((str(means) for word, means in setting.words.table["everyday"].items() if word in said), "")
    if len(within) == 1 and not everyday:
        return list(within)
    if not within:
        return []
    key = f"warning:{at}"
    answer = setting.asking.answer(key)
    if answer in ("none", DROP, UNKNOWN):
        return []
    if answer == "all":
        return list(within)
    chosen = named(setting, answer) if answer is not None else ""
    if chosen:
        return [chosen]
    reason = f"'{name}' can mean {', '.join(setting.title(id) for id in within)}"
    reason += f", or {everyday}" if everyday else ""
    if answer is not None:
        reason = f"'{answer}' is no exercise of this sheet; {reason}"
    options = [Proposal(id, setting.title(id)) for id in within] + [Proposal("all", "each of them")]
    options.append(Proposal("none", everyday or "none of them"))
    setting.asking.ask(key, f"What is '{name}' in '{words}'?", reason, tuple(options))
    return []


def readers_questions(setting: Setting, heard: Heard) -> tuple[TextQuestion, ...]:
    """The reader's questions, each with the exercise that it is about."""
    ids = setting.ids
    asked: list[TextQuestion] = []
    for at, question in enumerate(heard.asked, 1):
        key = f"ask:{at}"
        answer = setting.asking.answer(key)
        within = setting.names.within(setting.names.of_text(question.exercise), ids)
        id = SESSION if question.exercise == SESSION else named(setting, question.exercise)
        if answer is not None:
            id = SESSION if answer in ("none", SESSION, UNKNOWN) else named(setting, answer)
            if answer == DROP:
                continue
        if not id:
            setting.asking.ask(
                key,
                f"Which exercise is the reader's question about: '{question.words}'?",
                f"'{answer}' is no exercise" if answer else "the message does not tell",
                (*(Proposal(id, setting.title(id)) for id in (within or ids)), Proposal(SESSION, "the whole session")),
            )
            continue
        language = setting.client.language if (id, setting.client.language) in setting.known.exercises else "en"
        asked.append(TextQuestion(id, language, question.words, question.part))
    return tuple(asked)
