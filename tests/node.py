"""JavaScript without a browser: one node process, asked as often as wanted."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path
from typing import Any

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
