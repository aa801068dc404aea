"""The words of a condition are words that a survey can hold."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean, one_of
from latchside.library import Library
from latchside.library.walk import mappings_with
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

CODE = "condition-word"
_OPEN = "unknown"


def check(library: Library) -> Iterator[Finding]:
    """Each word under `is` is from the vocabulary of its field, and none says that nobody knows."""
    vocabulary_of = library.schemas.documents[VOCABULARY]["$defs"]["opening-field"]["x-vocabulary"]
    for device in library.of("device"):
        for path, test in mappings_with(frozenset({"field", "is"}), {one: device[one] for one in ("suits", "avoid")}):
            if test["field"] not in vocabulary_of:
                yield device.finding(
                    CODE, (*path, "is"), f"words for {test['field']}, which holds a figure", "below or above",
                    "Give it a limit, or ask about a field that holds a word.",
                )  # fmt: skip
                continue
            known = [word for word in library.schemas.words(vocabulary_of[test["field"]]) if word != _OPEN]
            for index, word in enumerate(test["is"]):
                if word not in known:
                    yield device.finding(
                        CODE, (*path, "is", index), f'"{word}" for {test["field"]}',
                        f"{one_of(known)}.{did_you_mean(word, known)}",
                        "Correct the word. What is not known is asked, and is no condition.",
                    )  # fmt: skip


RULE = Rule(CODE, check)
