"""JavaScript without a browser: one node process, asked as often as wanted."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys
from pathlib import Path
from typing import Any

from latchside.messages import javascript
from latchside.root import ROOT

NODE = Path(sys.executable).parent / "node"

_LOOP = """
import { createInterface } from "node:readline";
for await (const line of createInterface({ input: process.stdin })) {
  const { code, argument } = JSON.parse(line);
  let told;
  try {
    told = { value: await (0, eval)(`(${code})`)(argument) };
  } catch (error) {
    told = { error: String(error.stack) };
  }
  process.stdout.write(JSON.stringify(told) + "\\n");
}
"""


def pages_scripts(folder: Path) -> Path:
    """The scripts of the pages with their messages, in a folder from which node takes them as modules."""
    shutil.copytree(ROOT / "content/assets/js", folder / "assets/js")
    messages_of_pages(folder)
    (folder / "package.json").write_text('{"type": "module"}', "utf-8")
    return folder


def messages_of_pages(folder: Path) -> None:
    """The messages of the scripts of the pages, as the build writes them."""
    for path, text in javascript.scripts().items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, "utf-8")


class Node:
    """A running node. What a function gives goes through JSON, so that it has to be a tree of plain values."""

    def __init__(self) -> None:
        command = [str(NODE), "--disable-warning=MODULE_TYPELESS_PACKAGE_JSON", "--input-type=module", "--eval", _LOOP]
        self._process = subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8")

    def evaluate(self, code: str, argument: Any = None) -> Any:
        """What a function gives for an argument; a script is brought in by `import()` of its file's address."""
        process = self._process
        assert process.stdin
        assert process.stdout
        process.stdin.write(json.dumps({"code": code, "argument": argument}) + "\n")
        process.stdin.flush()
        told = json.loads(process.stdout.readline())
        assert "error" not in told, told["error"]
        return told.get("value")

    def close(self) -> None:
        """End it."""
        self._process.communicate()
