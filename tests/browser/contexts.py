"""Contexts of a browser, lent to one test after another.

Each comes as if it were new: nothing is open, stored or intercepted. What it has fetched and compiled of the site's
scripts it keeps, and that is most of what a new one costs. The page that a test had first stays, emptied, for the next
test: it has the scripts at hand.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any
from urllib.parse import urlsplit
from weakref import WeakKeyDictionary, WeakSet

from playwright.sync_api import Browser, BrowserContext, CDPSession, Error, Page, Request

_changed: WeakSet[BrowserContext | Page] = WeakSet()


def not_again(used: BrowserContext | Page) -> None:
    """A test has changed what no later one can have back, such as the clock: it is closed instead of being lent."""
    _changed.add(used)


def page_of(context: BrowserContext) -> Page:
    """An empty page: the one that the last test left, or a new one."""
    lent = _all.get(context)
    return lent.page() if lent else context.new_page()


class _Lent:
    """A context, with what clears it: a page that stays open and empty, and the origins that were visited."""

    def __init__(self, browser: Browser, options: dict[str, Any]) -> None:
        self.context = browser.new_context(**options)
        self.origins: set[str] = set()
        self._keeper = self.context.new_page()
        self._session: CDPSession = self.context.new_cdp_session(self._keeper)
        self._first: _Page | None = None
        self._taken = False
        self.context.on("request", self._asked)

    def _asked(self, request: Request) -> None:
        if request.is_navigation_request() and request.url.startswith("http"):
            self.origins.add("{0.scheme}://{0.netloc}".format(urlsplit(request.url)))

    def page(self) -> Page:
        """The page that is kept from test to test; where it is in use, a new one."""
        if self._taken:
            return self.context.new_page()
        self._taken = True
        self._first = self._first or _Page(self.context.new_page())
        return self._first.page

    def clear(self) -> None:
        """Close what is open, take off what is in the way, and empty every store."""
        kept = self._first if self._first and self._first.emptied() else None
        for page in self.context.pages:
            if page not in (self._keeper, kept and kept.page):
                page.close()
        self._first, self._taken = kept, False
        self.context.unroute_all()
        self.context.set_offline(False)
        self.context.clear_cookies()
        for origin in self.origins:
            self._session.send("Storage.clearDataForOrigin", {"origin": origin, "storageTypes": "all"})
        self.origins.clear()


class _Page:
    """A page that is used again, and what it takes to forget what it showed."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self._size = page.viewport_size
        self._session = page.context.new_cdp_session(page)

    def emptied(self) -> bool:
        """Whether it is as it was at first. One that is closed, broken or changed for good is not."""
        page = self.page
        if page in _changed or page.is_closed():
            return False
        try:
            page.evaluate("try { sessionStorage.clear() } catch {}")
            page.unroute_all()
            page.goto("about:blank")
            self._session.send("Page.resetNavigationHistory")
            page.emulate_media(media="null")
            if self._size and page.viewport_size != self._size:
                page.set_viewport_size(self._size)
        except Error:
            return False
        return True


_all: WeakKeyDictionary[BrowserContext, _Lent] = WeakKeyDictionary()


class Contexts:
    """The contexts that wait to be lent, by their browser and options."""

    def __init__(self) -> None:
        self._waiting: dict[str, list[_Lent]] = {}

    @contextmanager
    def lent(self, browser: Browser, **options: Any) -> Iterator[BrowserContext]:
        """A context with these options, for as long as the block lasts."""
        waiting = self._waiting.setdefault(repr((id(browser), sorted(options.items()))), [])
        one = waiting.pop() if waiting else _Lent(browser, options)
        _all[one.context] = one
        try:
            yield one.context
        finally:
            if one.context in _changed:
                one.context.close()
            else:
                one.clear()
                waiting.append(one)
