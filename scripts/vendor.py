"""Copy the libraries of the pages from the packages that `package.json` pins. Run it after `npm install`."""

from __future__ import annotations

import gzip
import io
import re
import zipfile

from latchside.root import ROOT
from latchside.site.lean import lean

PACKAGES = ROOT / "node_modules"
VENDOR = ROOT / "content/assets/js/vendor"
SOURCES = {
    "lit-html.js": "lit-html/lit-html.js",
    "directive.js": "lit-html/directive.js",
    "directive-helpers.js": "lit-html/directive-helpers.js",
    "guard.js": "lit-html/directives/guard.js",
    "repeat.js": "lit-html/directives/repeat.js",
    "minisearch.js": "minisearch/dist/es/index.js",
    "pyodide/pyodide.mjs": "pyodide/pyodide.mjs",
    "pyodide/pyodide.asm.mjs": "pyodide/pyodide.asm.mjs",
    "pyodide/pyodide.asm.wasm.gz": "pyodide/pyodide.asm.wasm",
    "pyodide/python_stdlib.zip": "pyodide/python_stdlib.zip",
}
"""Each file, and where its package has it. What ends in `.gz` is packed here, for hosts that do not pack it."""
_NO_USE = re.compile(
    r"(?:_pyrepl|multiprocessing|sqlite3|unittest|wsgiref|xmlrpc|idlelib|ensurepip|venv|curses|dbm|tkinter|lib2to3)/.*"
    r"|(?:_pydatetime|_pyio|antigravity|bdb|cProfile|cmd|code|compileall|doctest|ftplib|imaplib|mailbox|modulefinder"
    r"|netrc|optparse|pdb|pickletools|plistlib|poplib|profile|pstats|pty|py_compile|pyclbr|pydoc|rlcompleter|sched"
    r"|shelve|smtplib|symtable|tabnanny|this|timeit|trace|tracemalloc|tty|wave|webbrowser|zipapp)\.py"
    r"|http/(?:cookiejar|server)\.py"
    r"|encodings/(?:big5|cp(?!437|1252)|euc|gb|hp|hz|iso(?!8859_1[.])|johab|koi8|kz|mac|palmos|ptcp|quopri|rot|shift|tis|uu)\w*\.py"
)
"""What of Python's own library no page can use: debuggers, tests, servers, mail, other processes, old encodings."""


def library(name: str) -> bytes:
    """A library as it is served: as it came where it says its licence, else under its licence and without comments.

    Files beside one another name one another so, whatever their package does. Those of Python stay as they came, but
    for what of its own library no page can use; their licence stands beside them.
    """
    content = (PACKAGES / SOURCES[name]).read_bytes()
    if name.endswith(".zip"):
        return _of_use(content)
    if name.startswith("pyodide/"):
        return gzip.compress(content, 9, mtime=0) if name.endswith(".gz") else content
    text = content.decode("utf-8")
    if "@license" in text:
        return text.replace('from"../', 'from"./').encode()
    licence = (PACKAGES / SOURCES[name].split("/")[0] / "LICENSE.txt").read_text("utf-8").strip()
    lines = "\n".join(f" * {line}".rstrip() for line in ("@license MIT", *licence.splitlines()))
    return f"/**\n{lines}\n */\n{lean(text)}".encode()


def _of_use(stored: bytes) -> bytes:
    """The files of a ZIP that a page may use, all of one date."""
    written = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(stored)) as there, zipfile.ZipFile(written, "w") as made:
        for name in sorted(there.namelist()):
            if not _NO_USE.fullmatch(name):
                made.writestr(zipfile.ZipInfo(name), there.read(name), zipfile.ZIP_DEFLATED, 9)
    return written.getvalue()


def unpacked(name: str, content: bytes) -> object:
    """What a file holds: packing differs from one version of its library to another."""
    if name.endswith(".zip"):
        with zipfile.ZipFile(io.BytesIO(content)) as opened:
            return {one: opened.read(one) for one in opened.namelist()}
    return gzip.decompress(content) if name.endswith(".gz") else content


def main() -> None:
    """Write every library anew that is not what its package holds."""
    for name in SOURCES:
        path, content = VENDOR / name, library(name)
        path.parent.mkdir(exist_ok=True)
        if not path.exists() or unpacked(name, path.read_bytes()) != unpacked(name, content):
            path.write_bytes(content)


if __name__ == "__main__":
    main()
