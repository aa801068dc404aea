"""Copy the libraries of the pages from the packages that `package.json` pins. Run it after `npm install`."""

from __future__ import annotations

from latchside.root import ROOT
from latchside.site.lean import lean

PACKAGES = ROOT / "node_modules"
VENDOR = ROOT / "content/assets/js/vendor"
SOURCES = {"lit-html.js": "lit-html/lit-html.js", "minisearch.js": "minisearch/dist/es/index.js"}
"""Each file, and where its package has it."""


def library(name: str) -> str:
    """A library as it is served: as it came where it says its licence, else under its licence and without comments."""
    source = PACKAGES / SOURCES[name]
    text = source.read_text("utf-8")
    if "@license" in text:
        return text
    licence = (PACKAGES / SOURCES[name].split("/")[0] / "LICENSE.txt").read_text("utf-8").strip()
    lines = "\n".join(f" * {line}".rstrip() for line in ("@license MIT", *licence.splitlines()))
    return f"/**\n{lines}\n */\n{lean(text)}"


def main() -> None:
    """Write every library anew."""
    for name in SOURCES:
        (VENDOR / name).write_text(library(name), "utf-8")


if __name__ == "__main__":
    main()
