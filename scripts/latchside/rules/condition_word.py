"""The words of a condition are words that a survey can hold."""

from __future__ import annotations

from collections.abc import Iterator

from latchside.findings import Finding, did_you_mean, one_of
from latchside.library import Library
from latchside.library.walk import mappings_with
from latchside.messages import messages
from latchside.rules.rule import Rule
from latchside.schemas.load import VOCABULARY

message = messages(__name__)
CODE = "condition-word"
_OPEN = "unknown"


def check(library: Library) -> Iterator[Finding]:
    """Each word under `is` is from the vocabulary of its field, and none says that nobody knows."""
    vocabulary_of = library.schemas.documents[VOCABULARY]["$defs"]["opening-field"]["x-vocabulary"]
    for device in library.of("device"):
        for path, test in mappings_with(frozenset({"field", "is"}), {one: device[one] for one in ("suits", "avoid")}):
            if test["field"] not in vocabulary_of:
                yield device.finding(CODE, (*path, "is"), *message.finding("field-of-figures", field=test["field"]))
                continue
            known = [word for word in library.schemas.words(vocabulary_of[test["field"]]) if word != _OPEN]
            for index, word in enumerate(test["is"]):
                if word not in known:
                    problem = message.finding(
                        "unknown-word",
                        word=word,
                        field=test["field"],
                        known=one_of(known),
                        hint=did_you_mean(word, known),
                    )
                    yield device.finding(CODE, (*path, "is", index), *problem)


RULE = Rule(CODE, check)
