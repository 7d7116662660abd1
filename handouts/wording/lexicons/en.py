"""English words, in classes that the grammar of the kinds is written in."""

from handouts.wording.grammar import Lexicon

LEXICON = Lexicon({"leader": "and then but or so now just please next also okay ok right first to".split()})
