"""Write the words of the browser code where the type checker reads them, beside `content/assets/js`."""

from __future__ import annotations

from latchside.messages.javascript import scripts
from latchside.root import ROOT

TYPED = ROOT / ".cache/content"


def main() -> None:
    """Write every module of words anew."""
    for path, text in scripts().items():
        (TYPED / path).parent.mkdir(parents=True, exist_ok=True)
        (TYPED / path).write_text(text, "utf-8")


if __name__ == "__main__":
    main()
