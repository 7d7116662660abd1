"""Exercise texts by others, with and without faults of the whole text, and a list of the faults.

They were written with the guide alone, by people who knew no check of the
program.  `wa` showed what the checks did not see (36 of 49 found, 11 told for
nothing), and they were mended by it; `wb`, which came after, was measured first
(38 of 49, 1 for nothing), and then they were mended by it too, and so it went
with `wc` (40 of 53, 2 for nothing).  `wd` holds limbs in two places and clock
directions alone, and near misses; at first 5 of 30 were found, none of the
limbs, and the checks were mended by it.  A fault counts as found where a check of its name
tells something at its words, or, of a part or a whole text, in that text.
"""

import collections
import json
from pathlib import Path

import pytest

from handouts.wording.checking import check_all

TEXTS = Path(__file__).resolve().parents[1] / "wording_corpus" / "whole_texts"
OF_A_PART = ("parts", "completeness", "both-sides", "reading-grade")


def measured(name):
    """Found and planted faults by check, and what was told of texts without a fault of that check."""
    folder = TEXTS / name
    faults = json.loads((folder / "faults.json").read_text("utf-8"))
    checked = {Path(text.path).name: text for text in check_all([str(folder)]).texts}
    planted = collections.Counter(fault["sort"] for fault in faults)
    found: collections.Counter[str] = collections.Counter()
    for fault in faults:
        words = fault["words"]
        start = (folder / fault["file"]).read_text("utf-8").index(words)
        found[fault["sort"]] += any(
            told.name == fault["sort"] and (told.name in OF_A_PART or (told.start < start + len(words) and start < told.end))
            for told in checked[fault["file"]].whole_text
        )
    listed = {(fault["file"], fault["sort"]) for fault in faults}
    besides = [
        (name, told.name, told.words)
        for name, text in checked.items()
        for told in text.whole_text
        if told.name in planted and (name, told.name) not in listed
    ]
    return found, planted, besides


@pytest.mark.parametrize("name, share, most, sorts", [("wa", 0.93, 1, 9), ("wb", 0.83, 1, 9), ("wc", 0.77, 1, 9), ("wd", 0.9, 0, 2)])
def test_planted_faults_are_found_and_little_besides(name, share, most, sorts):
    found, planted, besides = measured(name)
    assert sum(planted.values()) >= 30 and len(planted) == sorts
    assert sum(found.values()) >= share * sum(planted.values()), found
    assert len(besides) <= most, besides
