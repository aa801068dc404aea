"""The worked examples of every record come out as they are written."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

import pytest

from tests.published.check import figures


def _examples() -> Iterator[Any]:
    for figure in figures().values():
        for index, example in enumerate(figure.data["examples"], start=1):
            yield pytest.param(figure.id, example, id=f"{figure.id} {index}")


@pytest.mark.parametrize(("figure", "example"), list(_examples()))
def test_example(figure: str, example: Mapping[str, Any]) -> None:
    outputs = figures()[figure].answer(example["inputs"]).outputs
    for name, wanted in example["outputs"].items():
        if isinstance(wanted, int | float) and not isinstance(wanted, bool):
            assert abs(outputs[name] - wanted) <= example["tolerance"] * (abs(wanted) or 1), name
        else:
            assert outputs[name] == wanted, name
