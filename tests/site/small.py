"""A small project that a site can be built of: the base project of the records, with a configuration of its own."""

from __future__ import annotations

from pathlib import Path

from latchside.kinds import KINDS
from latchside.root import ROOT
from tests.unit.support import lay

_NAMED = ", ".join(f"{{{kind.title}: {kind.index}index.md}}" for kind in KINDS.values())
_CONFIG = f"""
site_name: Small
docs_dir: content
exclude_docs: "*.yaml"
theme: {{name: material, custom_dir: {ROOT}/scripts/latchside/site/theme, font: false}}
nav: [index.md, {_NAMED}]
plugins: []
hooks: [{ROOT}/scripts/latchside/site/hook.py]
markdown_extensions: [attr_list, md_in_html, tables]
validation: {{nav: {{omitted_files: ignore}}}}
"""


def small(root: Path) -> Path:
    """The project, in a folder."""
    lay(root)
    (root / "mkdocs.yml").write_text(_CONFIG, "utf-8")
    (root / "content" / "index.md").write_text("# Home\n\n[Faults](faults/index.md)\n", "utf-8")
    own = root / "content" / "study" / "index.md"  # that of the package links to records that are not here
    own.parent.mkdir()
    own.write_text("# Study\n", "utf-8")
    return root
