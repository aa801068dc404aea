"""The date of a copy of the site. It is given from outside or read off the project's history, never off the clock."""

from __future__ import annotations

import os
import subprocess
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
    # Years run from March, so that the day a leap year adds is the last; 719468 days lead from year 0 to 1970.
    days = seconds // 86_400 + 719_468
    era, day_of_era = divmod(days, 146_097)
    year = (day_of_era - day_of_era // 1460 + day_of_era // 36_524 - day_of_era // 146_096) // 365
    day_of_year = day_of_era - (365 * year + year // 4 - year // 100)
    month = (5 * day_of_year + 2) // 153
    date = day_of_year - (153 * month + 2) // 5 + 1
    return f"{era * 400 + year + (month > 9):04}-{month + 3 - 12 * (month > 9):02}-{date:02}"
