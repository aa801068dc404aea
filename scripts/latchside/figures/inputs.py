"""The inputs of a figure: what is declared, and what a caller gave, read and held to it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from latchside.figures.typed import TypedError, read_list, read_number, shown_value
from latchside.findings import did_you_mean

_YES = {"true": True, "yes": True, "1": True, "false": False, "no": False, "0": False}


class InputError(ValueError):
    """Inputs from which nothing is worked out: one line for each that is wrong."""

    def __init__(self, lines: Iterable[str]) -> None:
        self.lines = tuple(lines)
        super().__init__("\n".join(self.lines))


@dataclass(frozen=True)
class Input:
    """One declared input. `name` ends in its unit; `choices` holds the words it may be, with what a reader sees."""

    name: str
    label: str
    unit: str = ""
    low: float | None = None
    high: float | None = None
    default: Any = None
    choices: Mapping[str, str] = field(default_factory=dict)
    integer: bool = False
    many: bool = False
    yes_no: bool = False
    optional: bool = False
    instead_of: str | None = None
    when: Mapping[str, str] = field(default_factory=dict)
    help: str = ""

    @property
    def bare(self) -> str:
        """The name without its unit: `length` for `length_m`."""
        head, _, tail = self.name.rpartition("_")
        return head if head and self.unit and _suffix(tail) == _suffix(self.unit) else self.name

    @property
    def accepts(self) -> str:
        """What it accepts, in words."""
        if self.choices:
            return "one of " + ", ".join(self.choices)
        if self.yes_no:
            return "true or false"
        several = "numbers " if self.many else ""
        whole = "a whole number " if self.integer else ""
        if self.low is not None and self.high is not None:
            return f"{several}{whole}from {shown_value(self.low, '')} to {shown_value(self.high, self.unit)}"
        if self.low is not None:
            return f"{several}{whole}of {shown_value(self.low, self.unit)} or more"
        if self.high is not None:
            return f"{several}{whole}of {shown_value(self.high, self.unit)} or less"
        return "a whole number" if self.integer else "numbers" if self.many else "a number"

    def read(self, value: object) -> Any:
        """The value in the input's own unit. Raises TypedError."""
        if self.choices:
            return self._word(value)
        if self.yes_no:
            said = str(value).strip().lower()
            if said not in _YES:
                raise TypedError(f'"{value}" is neither true nor false')
            return _YES[said]
        if self.many:
            return [self._in_range(one) for one in read_list(value, self.unit)]
        return self._in_range(read_number(value, self.unit))

    def _word(self, value: object) -> str:
        word = str(value).strip().lower().replace("_", "-").replace(" ", "-")
        for known in self.choices:
            if word == known.lower():
                return known
        raise TypedError(f'"{value}" is not {self.accepts}.{did_you_mean(word, self.choices)}')

    def _in_range(self, number: float) -> float | int:
        if (self.low is not None and number < self.low) or (self.high is not None and number > self.high):
            raise TypedError(f"{shown_value(number, self.unit)} is out of range; give {self.accepts}")
        if not self.integer:
            return number
        if number != int(number):
            raise TypedError(f"{shown_value(number, self.unit)} is not whole; give {self.accepts}")
        return int(number)


def declared(data: Iterable[Mapping[str, Any]]) -> tuple[Input, ...]:
    """The inputs that a record declares."""
    return tuple(
        Input(
            one["name"], one["label"], one.get("unit", ""), one.get("min"), one.get("max"), one.get("default"),
            one.get("choices", {}), one.get("integer", False), one.get("list", False), one.get("yes_no", False),
            one.get("optional", False), one.get("instead_of"), one.get("when", {}), one.get("help", ""),
        )
        for one in data
    )  # fmt: skip


def read_inputs(known: tuple[Input, ...], given: Mapping[str, object]) -> dict[str, Any]:
    """Every input by name, in its own unit; None where it was not given and has no default.

    Raises InputError with a line for each input that is unknown, missing, out of range or not a number.
    """
    wrong: list[str] = []
    values = _given(known, given, wrong)
    if not wrong:
        _complete(known, values, wrong)
    if wrong:
        raise InputError(wrong)
    return {one.name: values.get(one.name) for one in known}


def _given(known: tuple[Input, ...], given: Mapping[str, object], wrong: list[str]) -> dict[str, Any]:
    values: dict[str, Any] = {}
    for key, value in given.items():
        if value is None or (isinstance(value, str) and not value.strip()):
            continue
        found = _named(known, key, value)
        if isinstance(found, str):
            wrong.append(found)
        elif found.name in values:
            wrong.append(f"{found.name}: given twice")
        else:
            try:
                values[found.name] = found.read(value)
            except TypedError as error:
                values[found.name] = None
                wrong.append(f"{found.name}: {error}{'' if _told(str(error)) else f'; it takes {found.accepts}'}")
    return values


def _told(words: str) -> bool:
    return "; give" in words or "one of" in words


def _named(known: tuple[Input, ...], key: str, value: object) -> Input | str:
    name = key.strip().lower().replace("-", "_")
    exact = [one for one in known if one.name == name]
    alike = exact or [one for one in known if one.bare == name]
    if len(alike) > 1:
        alike = [one for one in alike if isinstance(value, str) and _fits(one, value)] or alike
    if not alike:
        return f"{key}: unknown; this figure takes {', '.join(one.name for one in known)}.{_meant(name, known)}"
    if len(alike) > 1:
        return f"{key}: could be {' or '.join(one.name for one in alike)}; give the full name"
    return alike[0]


def _meant(name: str, known: tuple[Input, ...]) -> str:
    return did_you_mean(name, [one.name for one in known])


def _fits(one: Input, text: str) -> bool:
    """Whether the text has a unit, and one that the input takes."""
    if text.strip()[-1:].isdigit() or one.choices or one.yes_no:
        return False
    try:
        read_number(text, one.unit)
    except TypedError:
        return False
    return True


def _complete(known: tuple[Input, ...], values: dict[str, Any], wrong: list[str]) -> None:
    """Put in the defaults, and note what is missing or does not belong together."""
    groups: dict[str, list[Input]] = {}
    for one in known:
        groups.setdefault(one.instead_of or one.name, []).append(one)
    for group in groups.values():
        asked = [one for one in group if _asked(one, known, values)]
        for one in group:
            if one not in asked and one.name in values:
                wanted = " and ".join(f"{name}={word}" for name, word in one.when.items())
                wrong.append(f"{one.name}: only with {wanted}; leave it out")
        present = [one.name for one in asked if one.name in values]
        if len(present) > 1:
            wrong.append(f"{present[1]}: given beside {present[0]}; give one of the two")
        elif asked and not present:
            _default(asked, values, wrong)


def _default(asked: list[Input], values: dict[str, Any], wrong: list[str]) -> None:
    for one in asked:
        if one.default is not None:
            try:
                values[one.name] = one.read(one.default)
            except TypedError as error:
                wrong.append(f"{one.name}: its own default is refused: {error}")
            return
    if not any(one.optional for one in asked):
        names = " or ".join(one.name for one in asked)
        wrong.append(f"{names}: missing; give {' or '.join(f'{one.label} ({one.accepts})' for one in asked)}")


def _asked(one: Input, known: tuple[Input, ...], values: Mapping[str, Any]) -> bool:
    by_name = {other.name: other for other in known}
    return all(
        values.get(name, by_name[name].default if name in by_name else None) == word for name, word in one.when.items()
    )


def _suffix(unit: str) -> str:
    return {"degc": "c", "degf": "f", "%": "percent", "year": "years", "degk": "k"}.get(unit.lower(), unit.lower())
