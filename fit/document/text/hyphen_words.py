"""Words and parts of words that say by themselves whether a hyphen at a line end is theirs; common practice, no source."""

from __future__ import annotations

PREFIXES = {
    "re", "un", "non", "sub", "pre", "pro", "anti", "inter", "multi", "over", "under", "semi", "counter",
}  # fmt: skip
"""First parts that are no words and yet are not broken off."""
HUNG = {"and", "or", "to", "nor", "und", "oder", "et", "ou"}
"""Words that stand behind a hung part, as in `pre- and post-processing`."""
WITH_HUNG = {
    "thousand", "errand", "brigand", "husband", "island", "command", "demand", "expand", "understand",
    "withstand", "garland", "mainland", "into", "onto", "photo", "potato", "tomato", "motto", "veto",
    "manifesto", "memento", "pinto", "quarto", "ditto", "grotto",
}  # fmt: skip
"""Words that end in one of the above, so that "thous-" + "and" is no hung word."""
APART = {
    "self", "non", "ex", "well", "half", "all", "quasi", "cross", "read", "write", "user", "built", "double",
    "single", "high", "low", "full", "left", "right", "two", "three", "four", "five", "six", "seven", "eight",
    "nine", "ten", "twelve", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety",
    "first", "second", "third", "real", "long", "short", "hard", "soft", "wide", "one", "multi", "semi",
    "upper", "lower", "plug", "stand", "so", "co", "e", "x", "t",
}  # fmt: skip
"""First parts that mostly keep their hyphen before a whole word."""
AFTER = {
    "only", "based", "free", "known", "oriented", "defined", "specific", "dependent", "independent", "sized",
    "shaped", "driven", "level", "like", "in", "by", "to", "of", "bit", "byte", "time", "key", "speed", "side",
    "readable", "compatible", "aligned", "purpose", "quality", "colored", "coloured", "footed", "handed",
}  # fmt: skip
"""Second parts that mostly keep theirs."""
QUARTERS = {
    "north", "south", "east", "west", "northerly", "southerly", "easterly", "westerly", "eastern", "western",
}  # fmt: skip
"""Parts of the names of winds and of regions, which keep theirs: `north-easterly`."""
