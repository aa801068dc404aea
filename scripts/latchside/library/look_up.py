"""What pages look up in the library again and again: records by their ids, cautions by their gravity, a step."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from latchside.library.compiled import own_steps
from latchside.library.model import Library, Record


class LookUp:
    """A page, or a document, that has the library at hand."""

    def __init__(self, library: Library) -> None:
        self.library = library

    def records(self, kind: str, ids: Any) -> list[Record]:
        """The sound records among `ids`, in the order given; `none` and absent lists are empty."""
        listed: Sequence[str] = () if ids in (None, "none") else ids
        return [record for id_ in listed if (record := self.library.find(kind, id_))]

    def by_level(self, ids: Any) -> list[tuple[str, list[Record]]]:
        """Cautions under their signal words, the worst first."""
        cautions = self.records("caution", ids)
        levels = self.library.schemas.words("level").items()
        groups = [(shown, [one for one in cautions if one["level"] == level]) for level, shown in levels]
        return [(shown, group) for shown, group in groups if group]

    def step(self, reference: str) -> Mapping[str, Any]:
        """The step that `procedure/step` names; empty where there is none."""
        procedure_id, _, step_id = reference.partition("/")
        procedure = self.library.find("procedure", procedure_id)
        steps = own_steps(procedure) if procedure else ()
        return next((step for _, step in steps if step["id"] == step_id), {})
