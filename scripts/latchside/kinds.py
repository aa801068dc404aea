"""The table of kinds: each kind of record, its folder, its schema, its template and its address."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Kind:
    """One kind of record.

    `address` is where a record's page stands in the site, with `{id}` for the record's id; kinds whose
    records share one page have an address with `#{id}`.
    """

    id: str
    plural: str
    title: str
    folder: str
    address: str
    page_type: str

    @property
    def schema(self) -> str:
        """File name of the schema in `schema/`."""
        return f"{self.id}.schema.json"

    @property
    def template(self) -> str:
        """File name of the page template."""
        return f"{self.id}.jinja"

    @property
    def index(self) -> str:
        """Address of the page that lists the records of this kind."""
        return f"{self.plural}/"

    @property
    def own_page(self) -> bool:
        """Whether each record has a page of its own."""
        return "#" not in self.address


KINDS: dict[str, Kind] = {
    kind.id: kind
    for kind in (
        Kind("device", "devices", "Devices", "content/devices", "devices/{id}/", "reference"),
        Kind("procedure", "procedures", "Procedures", "checklists/procedures", "procedures/{id}/", "procedure"),
        Kind("checklist", "checklists", "Checklists", "checklists", "checklists/{id}/", "checklist"),
        Kind("fault", "faults", "Faults", "content/faults", "faults/{id}/", "fault"),
        Kind("caution", "cautions", "Cautions", "content/cautions", "cautions/{id}/", "reference"),
        Kind("formula", "figures", "Figures", "shared/formulas", "figures/{id}/", "reference"),
        Kind("table", "tables", "Tables", "shared/tables", "tables/{id}/", "reference"),
        Kind("term", "terms", "Terms", "shared/terms", "terms/#{id}", "reference"),
        Kind("word", "words", "Words by region", "shared/words", "words/#{id}", "reference"),
        Kind("tool", "tools", "Tools", "shared/tools", "tools/#{id}", "reference"),
        Kind("source", "sources", "Sources", "shared/sources", "sources/#{id}", "reference"),
        Kind("job", "jobs", "Jobs", "content/jobs", "jobs/{id}/", "reference"),
    )
}

DRAWINGS = "content/drawings"
"""The folder of the drawings, each an SVG file whose name is its id."""

CARDS = ("placement", "meter", "closed-or-open", "steel-and-foil", "two-continents")
"""The hand-written cards under `content/cards/`, by id; a text may link to them as [[card/id]]."""
