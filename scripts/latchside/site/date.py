"""The date of a copy of the site. It is given from outside or read off the project's history, never off the clock."""

from __future__ import annotations

import os
import subprocess
from datetime import date, timedelta
from pathlib import Path

UNDATED = "undated"


def copy_date(root: Path) -> str:
    """SOURCE_DATE_EPOCH as a date, else that of the last commit, else `undated`."""
    given = os.environ.get("SOURCE_DATE_EPOCH", "")
    if given.isdecimal():
        return day(int(given))
    try:
        command = ["git", "-C", str(root), "log", "-1", "--format=%ct"]
        done = subprocess.run(command, capture_output=True, text=True, check=True)
    except (OSError, subprocess.CalledProcessError):
        return UNDATED
    return day(int(done.stdout)) if done.stdout.strip().isdecimal() else UNDATED


def day(seconds: int) -> str:
    """The day in UTC on which a second since 1970 falls, as YYYY-MM-DD."""
    return (date(1970, 1, 1) + timedelta(days=seconds // 86_400)).isoformat()
