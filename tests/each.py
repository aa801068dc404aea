"""One test over many cheap cases: a case of its own would cost more in bookkeeping than in looking."""

from __future__ import annotations

import inspect
from collections.abc import Callable, Iterable
from typing import Any

Test = Callable[..., None]


def each(
    names: str | tuple[str, ...],
    cases: Iterable[Any] | Callable[[], Iterable[Any]],
    ids: Callable[[Any], str] = ascii,
) -> Callable[[Test], Test]:
    """As `pytest.mark.parametrize`, but one test, which looks at every case and names all that fail.

    Cases that take work to make are given as a function, which is called when the test runs.
    """
    taken = (names,) if isinstance(names, str) else names

    def decorate(test: Test) -> Test:
        def whole(**fixtures: Any) -> None:
            wrong: list[str] = []
            made = cases() if callable(cases) else cases
            listed = [(case,) if isinstance(names, str) else tuple(case) for case in made]
            assert listed, "no case"
            for case in listed:
                try:
                    test(**dict(zip(taken, case, strict=True)), **fixtures)
                except AssertionError as error:
                    wrong.append(f"{' '.join(map(ids, case))}: {error}")
            assert not wrong, "\n\n".join(wrong)

        asked = inspect.signature(test)
        whole.__name__, whole.__doc__, whole.__module__ = test.__name__, test.__doc__, test.__module__
        kept = [one for name, one in asked.parameters.items() if name not in taken]
        whole.__signature__ = asked.replace(parameters=kept)  # type: ignore[attr-defined]  # the fixtures
        return whole

    return decorate
