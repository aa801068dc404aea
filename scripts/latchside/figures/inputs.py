"""The inputs of a figure: what is declared, and what a caller gave, read and held to it."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Any

from latchside.figures.typed import TypedError, read_list, read_number, shown_value
from latchside.findings import did_you_mean
from latchside.messages import listed, messages

message = messages(__name__)

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
    more: bool = False

    @property
    def bare(self) -> str:
        """The name without its unit: `length` for `length_m`."""
        head, _, tail = self.name.rpartition("_")
        return head if head and self.unit and _suffix(tail) == _suffix(self.unit) else self.name

    @property
    def accepts(self) -> str:
        """What it accepts, in words."""
        if self.choices:
            return message("one-of", words=", ".join(self.choices))
        if self.yes_no:
            return message("true-or-false")
        sort = ("many-whole" if self.integer else "many") if self.many else "whole" if self.integer else "one"
        if self.low is not None and self.high is not None:
            ends = {"low": shown_value(self.low, ""), "high": shown_value(self.high, self.unit)}
            return message("from-to", sort=sort, **ends)
        if self.low is not None:
            return message("or-more", sort=sort, low=shown_value(self.low, self.unit))
        if self.high is not None:
            return message("or-less", sort=sort, high=shown_value(self.high, self.unit))
        return message("any", sort=sort)

    def read(self, value: object) -> Any:
        """The value in the input's own unit. Raises TypedError."""
        if self.choices:
            return self._word(value)
        if self.yes_no:
            text = str(value).strip().lower()
            if text not in _YES:
                raise TypedError(message("not-true-or-false", typed=str(value)))
            return _YES[text]
        if self.many:
            return [self._in_range(one) for one in read_list(value, self.unit)]
        return self._in_range(read_number(value, self.unit))

    def _word(self, value: object) -> str:
        word = str(value).strip().lower().replace("_", "-").replace(" ", "-")
        for known in self.choices:
            if word == known.lower():
                return known
        raise TypedError(
            message("not-among", typed=str(value), accepts=self.accepts) + did_you_mean(word, self.choices),
            advises=True,
        )

    def _in_range(self, number: float) -> float | int:
        if (self.low is not None and number < self.low) or (self.high is not None and number > self.high):
            raise self._refused("out-of-range", number)
        if not self.integer:
            return number
        if number != int(number):
            raise self._refused("not-whole", number)
        return int(number)

    def _refused(self, id: str, number: float) -> TypedError:
        values = {"figure": shown_value(number, self.unit), "accepts": self.accepts}
        return TypedError(message(id, **values), message(f"{id}.found", **values))


def declared(data: Iterable[Mapping[str, Any]]) -> tuple[Input, ...]:
    """The inputs that a record declares."""
    return tuple(
        Input(
            one["name"], one["label"], one.get("unit", ""), one.get("min"), one.get("max"), one.get("default"),
            one.get("choices", {}), one.get("integer", False), one.get("list", False), one.get("yes_no", False),
            one.get("optional", False), one.get("instead_of"), one.get("when", {}), one.get("help", ""),
            one.get("more", False),
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
        target = _named(known, key, value)
        if isinstance(target, str):
            wrong.append(target)
        elif target.name in values:
            wrong.append(message("twice", name=target.name))
        else:
            try:
                values[target.name] = target.read(value)
            except TypedError as error:
                values[target.name] = None
                id_ = "refused" if error.advises else "refused-takes"
                wrong.append(message(id_, name=target.name, found=str(error), accepts=target.accepts))
    return values


def _named(known: tuple[Input, ...], key: str, value: object) -> Input | str:
    name = key.strip().lower().replace("-", "_")
    exact = [one for one in known if one.name == name]
    alike = exact or [one for one in known if one.bare == name]
    if len(alike) > 1:
        alike = [one for one in alike if isinstance(value, str) and _fits(one, value)] or alike
    if not alike:
        return message("unknown", name=key, inputs=", ".join(one.name for one in known)) + _meant(name, known)
    if len(alike) > 1:
        return message("ambiguous", name=key, names=listed([one.name for one in alike], "or"))
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
                wanted = listed([f"{name}={word}" for name, word in one.when.items()])
                wrong.append(message("only-with", name=one.name, wanted=wanted))
        present = [one.name for one in asked if one.name in values]
        if len(present) > 1:
            wrong.append(message("both", name=present[1], other=present[0]))
        elif asked and not present:
            _default(asked, values, wrong)


def _default(asked: list[Input], values: dict[str, Any], wrong: list[str]) -> None:
    for one in asked:
        if one.default is not None:
            try:
                values[one.name] = one.read(one.default)
            except TypedError as error:
                wrong.append(message("default-refused", name=one.name, found=str(error)))
            return
    if not any(one.optional for one in asked):
        names = listed([one.name for one in asked], "or")
        labels = listed([f"{one.label} ({one.accepts})" for one in asked], "or")
        wrong.append(message("missing", names=names, labels=labels))


def _asked(one: Input, known: tuple[Input, ...], values: Mapping[str, Any]) -> bool:
    by_name = {other.name: other for other in known}
    return all(
        values.get(name, by_name[name].default if name in by_name else None) == word for name, word in one.when.items()
    )


def _suffix(unit: str) -> str:
    return {"degc": "c", "degf": "f", "%": "percent", "year": "years", "degk": "k"}.get(unit.lower(), unit.lower())
