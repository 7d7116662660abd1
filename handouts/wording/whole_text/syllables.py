"""Syllables of English words, by rules of spelling and a short list of exceptions.

Measured against the CMU Pronouncing Dictionary by a test.
"""

from __future__ import annotations

import re
from functools import lru_cache

_VOWELS = re.compile(r"[aeiouy]+")

# An e that is written and not spoken: at the end of the word, in the endings
# -es and -ed, and before an ending that is a word or a syllable of its own.
_SILENT = re.compile(
    r"[^aeiouy]e$|(?<=[aeiouy][rl])es$|[^aeiouycgszxh]es$|[^cs]hes$|[^aeiouytd]ed$|[qg]ue$"
    r"|[aeiouy][^aeiouy]{1,2}e(?=(?:ly|ments?|ful|fully|less|ness|things?|times?|where|body|bones?|boards?|work|sides?|"
    r"lines?|backs?|ways?|wards?|teen|ty|caps?|self|selves|place|heads?|foot|vines?|steps?|tables?)$)"
)
# An e that is spoken after all: -le and -re after a consonant.
_SPOKEN = re.compile(r"[^aeiouylrw]le[sd]?$|[^aeiouylrwn]re[sd]?$")
# Neighbouring vowels that are two syllables.
_APART = re.compile(
    r"(?<![ctsgxhl])i(?:a(?!ge|n?ce$)|o(?!us)|ous|um|us$)|(?<=[^aeiou])i(?:er|est)$|lia(?:r|n)?$"
    r"|(?<![gq])u(?:al(?!ly)|ate|ou|ity|ing|ar[ye]|ance|able)"
    r"|(?:[^aeiouq]y|[aeiou][eiouy]?|lh)(?<=[aeiouy])ing"
    r"|cre?ate|rea(?:l[iy]|ct)|ide[ao]|ae(?:ro|st)|eo(?:me|gr|lo|$)|deo|oe[mt]|oo?per|iet[^f]?|die[nt]|science|lion$|"
    r"via|naï|poem|being|influen|fluid|ruin|radii|area|doable|bbly$"
)
_EXCEPTIONS = {
    word: count
    for count, words in {
        2: "beyond buoy client clients evening evenings fire fires flyer hour hours million o'clock our ours rhythm "
        "rhythms several tired tires wednesday zoe",
        3: "anyone entire everyone opinion opinions physio whoever",
        4: "actually diabetes usually",
    }.items()
    for word in words.split()
}


@lru_cache(maxsize=20_000)
def syllables(word: str) -> int:
    """The number of syllables of one word in lower case, 1 or more."""
    word = word.replace("’", "'")
    if "-" in word:
        return sum(syllables(part) for part in word.split("-") if part) or 1
    known = _EXCEPTIONS.get(word)
    if known is not None:
        return known
    more = 0
    if "'" in word:
        word, _, ending = word.partition("'")
        if ending == "t" and word.endswith(("dn", "sn", "vn")):
            more = 1  # didn't, isn't
        elif ending == "s" and word.endswith(("ch", "sh", "s", "x", "z", "ce", "ge", "se")):
            more = 1
        return max(1, _count(word)) + more
    return max(1, _count(word))


def _count(word: str) -> int:
    if word in _EXCEPTIONS:
        return _EXCEPTIONS[word]
    word = re.sub("^every(?=[btdw])", "evry", word)
    return (
        len(_VOWELS.findall(word)) - len(_SILENT.findall(word)) + len(_SPOKEN.findall(word)) + len(_APART.findall(word))
    )
