"""Reading ease: sentences of over 25 words, and a Flesch-Kincaid grade over 8."""

from __future__ import annotations

from collections.abc import Iterator

from handouts.wording.whole_text.check import Check, Flaw
from handouts.wording.whole_text.document import Document, Piece
from handouts.wording.whole_text.reading import words_of

LONGEST = 25
"""Words that a sentence may have."""

HARDEST = 8
"""The school grade that a text may ask for."""


def _long_sentences(document: Document) -> Iterator[Flaw]:
    before: Piece | None = None
    for piece in document.pieces:
        # Most sentences are too short in characters to have so many words.
        if len(piece.text) > 2 * LONGEST and not _goes_on(before, piece):
            count = len(words_of(piece.text))
            if count > LONGEST:
                yield Flaw(
                    piece.start,
                    piece.end,
                    f"This sentence has {count} words; a listener holds {LONGEST} at most.",
                    "Make two sentences of it, with one action each.",
                )
        before = piece


def _goes_on(before: Piece | None, piece: Piece) -> bool:
    """Whether this is the rest of a sentence that was cut for its length."""
    return before is not None and piece.start - before.end <= 1 and before.text[-1] not in ".!?…"


def _hard_texts(document: Document) -> Iterator[Flaw]:
    found = document.reading
    if found.grade is not None and found.grade > HARDEST and found.syllables is not None:
        first = document.pieces[0]
        yield Flaw(
            first.start,
            first.end,
            f"The text reads at grade {found.grade} of Flesch and Kincaid, above {HARDEST}: "
            f"{found.words / found.sentences:.1f} words a sentence, {found.syllables / found.words:.2f} syllables a word.",
            "Use shorter sentences and plainer words throughout.",
        )


LONG_SENTENCE = Check(
    name="long-sentence",
    strength="advice",
    what=f"A sentence of more than {LONGEST} words.",
    why="Who listens, or reads letter by letter, has to hold the whole sentence in mind before it can be done.",
    everywhere=False,
    find=_long_sentences,
    flag=(
        "Set both feet flat on the floor below your hips, let both arms hang, and then, while you breathe out, push the "
        "floor away with both heels until you stand.",
    ),
    leave=(
        "Set both feet flat on the floor below your hips. Let both arms hang. Breathe out and push the floor away.",
        "- Both feet on the floor\n- Both arms hanging\n- Chin level\n- Shoulders low\n- Both knees soft\n- Ribs over "
        "hips\n- Breath calm\n- Mouth closed\n- Hands open\n- Weight on both heels\n",
    ),
)

READING_GRADE = Check(
    name="reading-grade",
    strength="advice",
    what=f"A reading grade over {HARDEST}, by the formula of Flesch and Kincaid; in English alone.",
    why="A text at the level of a newspaper's front page takes too much attention from the movement itself.",
    everywhere=True,
    find=_hard_texts,
    flag=(
        "Simultaneous stabilisation of the lumbar musculature facilitates considerably improved mechanical efficiency. "
        "Progressive intensification necessitates individualised supervision. Participants demonstrating insufficient "
        "coordination require supplementary proprioceptive preparation before advancing toward additional resistance. "
        "Recommendations regarding appropriate periodisation accompany individual documentation.",
    ),
    leave=(
        "Sit on the chair. Put both feet flat on the floor, one palm width apart. Rest both hands on your thighs. Lean "
        "forward from your hips. Press both heels down and stand up. Breathe out as you rise. Sit down again.",
    ),
)
