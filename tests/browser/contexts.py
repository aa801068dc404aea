"""Contexts of a browser, lent to one test after another.

Each comes as if it were new: nothing is open, stored or intercepted. What it has fetched and compiled of the site's
scripts it keeps, and that is most of what a new one costs.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any
from urllib.parse import urlsplit
from weakref import WeakSet

from playwright.sync_api import Browser, BrowserContext, CDPSession, Request

_changed: WeakSet[BrowserContext] = WeakSet()


def not_again(context: BrowserContext) -> None:
    """A test has changed what no later one can have back, such as the clock: it is closed instead of being lent."""
    _changed.add(context)


class _Lent:
    """A context, with what clears it: a page that stays open and empty, and the origins that were visited."""

    def __init__(self, browser: Browser, options: dict[str, Any]) -> None:
        self.context = browser.new_context(**options)
        self.origins: set[str] = set()
        self._keeper = self.context.new_page()
        self._session: CDPSession = self.context.new_cdp_session(self._keeper)
        self.context.on("request", self._asked)

    def _asked(self, request: Request) -> None:
        if request.is_navigation_request() and request.url.startswith("http"):
            self.origins.add("{0.scheme}://{0.netloc}".format(urlsplit(request.url)))

    def clear(self) -> None:
        """Close what is open, take off what is in the way, and empty every store."""
        for page in self.context.pages:
            if page is not self._keeper:
                page.close()
        self.context.unroute_all()
        self.context.set_offline(False)
        self.context.clear_cookies()
        for origin in self.origins:
            self._session.send("Storage.clearDataForOrigin", {"origin": origin, "storageTypes": "all"})
        self.origins.clear()


class Contexts:
    """The contexts that wait to be lent, by their browser and options."""

    def __init__(self) -> None:
        self._waiting: dict[str, list[_Lent]] = {}

    @contextmanager
    def lent(self, browser: Browser, **options: Any) -> Iterator[BrowserContext]:
        """A context with these options, for as long as the block lasts."""
        waiting = self._waiting.setdefault(repr((id(browser), sorted(options.items()))), [])
        one = waiting.pop() if waiting else _Lent(browser, options)
        try:
            yield one.context
        finally:
            if one.context in _changed:
                one.context.close()
            else:
                one.clear()
                waiting.append(one)
