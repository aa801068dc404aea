"""Write down how far every figure lies from its outside sources: `python -m tests.published.measure`."""

from __future__ import annotations

import json

from tests.published.every import REPORT, report


def main() -> None:
    """Write the report."""
    REPORT.write_text(json.dumps(report(), indent=2) + "\n", "utf-8")
    print(f"Wrote {REPORT.name}.")


if __name__ == "__main__":
    main()
