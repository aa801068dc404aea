"""A checked library as one text, for where its files cannot be read again: in the page that plans.

It holds what the records say, and neither where in their files they say it nor the drawings: no plan asks for those.
"""

from __future__ import annotations

import json

from latchside.kinds import KINDS
from latchside.library.model import Library, build_library
from latchside.read.tree import RawRecord
from latchside.read.yaml_text import Document
from latchside.schemas import Schemas


def snapshot(library: Library) -> str:
    """The records of a library as JSON: kind, id, and what the file of the record said."""
    records = {kind: {one.id: one.raw.value for one in known.values()} for kind, known in library.records.items()}
    return json.dumps(records, ensure_ascii=False, separators=(",", ":"), sort_keys=True)


def library_from(text: str, schemas: Schemas) -> Library:
    """The library of a snapshot; its records were checked when it was taken."""
    records = json.loads(text)
    raw = (
        RawRecord(KINDS[kind], f"{KINDS[kind].folder}/{id_}.yaml", id_, Document(value))
        for kind, known in records.items()
        for id_, value in known.items()
    )
    return build_library(raw, schemas)
