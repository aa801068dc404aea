"""Lighthouse on pages of the built site, served packed as hosts serve it. Needs npm; fetches the tool it runs.

Performance has to reach 95 and accessibility 100 on a checklist page: the median of the runs counts, as its makers
advise, because a busy machine slows single ones. Exit 1 where it is not reached.
"""

from __future__ import annotations

import gzip
import json
import os
import shutil
import statistics
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from bring_browser import bring, chromium_path
from latchside.root import ROOT
from latchside.site.build import build_site

VERSION = "12.2.3"
RUNS = 5
PAGES = ("checklists/proving-each-opening/", "checklists/position/")
LIMITS = {"performance": 95, "accessibility": 100}
_PACKED = (".html", ".css", ".js", ".json", ".svg", ".xml")


class _Packing(SimpleHTTPRequestHandler):
    """Serves text packed, and lets browsers keep what carries its digest in its name."""

    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        content = path.read_bytes()
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        if path.suffix in _PACKED:
            content = gzip.compress(content, 6)
            self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(content)))
        self.end_headers()
        self.wfile.write(content)

    def log_message(self, format: str, *args: Any) -> None:
        pass


@contextmanager
def served(folder: Path) -> Iterator[str]:
    """The folder served on this host, packed."""
    with ThreadingHTTPServer(("127.0.0.1", 0), partial(_Packing, directory=str(folder))) as server:
        server.daemon_threads = True
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_address[1]}/"
        server.shutdown()


def tool(folder: Path) -> list[str]:
    """The command that runs the tool: fetched by npm into a folder of its own."""
    npm = shutil.which("npm")
    if not npm:
        raise SystemExit("There is no npm here; the tool is fetched by it.")
    command = [npm, "install", "--no-audit", "--no-fund", "--prefix", str(folder), f"lighthouse@{VERSION}"]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
    return [str(folder / "node_modules" / ".bin" / "lighthouse")]


def measured(command: list[str], address: str, chromium: str) -> dict[str, Any]:
    """What one run says of a page."""
    flags = "--headless=new --no-sandbox --disable-gpu"
    wanted = [f"--only-categories={','.join(LIMITS)}", f"--chrome-flags={flags}", "--output=json", "--quiet"]
    own = {**os.environ, "CHROME_PATH": chromium}
    done = subprocess.run([*command, address, *wanted], check=True, env=own, capture_output=True, text=True)
    found: dict[str, Any] = json.loads(done.stdout)
    return found


def main() -> None:
    """Measure each page and print its scores; a folder with the built site may be named."""
    chromium, missed = chromium_path() or bring(), False
    with TemporaryDirectory() as temporary:
        folder = Path(temporary)
        site = Path(sys.argv[1]) if len(sys.argv) > 1 else build_site(ROOT, folder / "site")[0]
        command = tool(folder / "tool")
        with served(site) as base:
            for page in PAGES:
                runs = [measured(command, base + page, chromium) for _ in range(RUNS)]
                for name, limit in LIMITS.items():
                    scores = [round(100 * run["categories"][name]["score"]) for run in runs]
                    missed |= statistics.median(scores) < limit
                    print(f"{page} {name}: median {statistics.median(scores):.0f} of {scores} (at least {limit})")
                for name in ("largest-contentful-paint", "total-blocking-time", "cumulative-layout-shift"):
                    print(f"  {name}: {', '.join(run['audits'][name]['displayValue'] for run in runs)}")
    sys.exit(missed)


if __name__ == "__main__":
    main()
