"""One page at a time through the machinery of MkDocs: its files, its navigation, its plugins and its templates."""

from __future__ import annotations

import json
import logging
from dataclasses import dataclass

from jinja2 import Environment
from mkdocs.commands.build import get_context
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.structure.files import File, Files, get_files, set_exclusions
from mkdocs.structure.nav import Navigation, get_navigation
from mkdocs.structure.pages import Page

from latchside.site.written import WrittenPage


@dataclass(frozen=True)
class Engine:
    """A site that is ready to be made page by page.

    `config._current_page` is MkDocs' own: it is what `!relative` in a `mkdocs.yml` goes by.
    """

    config: MkDocsConfig
    files: Files
    nav: Navigation
    env: Environment
    documents: list[File]

    def read(self, file: File) -> Page:
        """The page of a file, read and turned into HTML, not yet in its frame. What MkDocs dislikes in it is logged."""
        page = page_of(file)
        plugins = self.config.plugins
        self.config._current_page = page
        try:
            page = plugins.on_pre_page(page, config=self.config, files=self.files) or page
            page.read_source(self.config)
            if not isinstance(page, WrittenPage):  # those hold no macros
                page.markdown = plugins.on_page_markdown(
                    page.markdown or "", page=page, config=self.config, files=self.files
                )
            page.render(self.config, self.files)
            page.content = plugins.on_page_content(page.content or "", page=page, config=self.config, files=self.files)
        finally:
            self.config._current_page = None
        return page

    def framed(self, page: Page) -> str:
        """A page that was read, in the frame of the theme."""
        plugins = self.config.plugins
        self.config._current_page = page
        page.active = True
        try:
            context = get_context(self.nav, self.documents, self.config, page)
            template = self.env.get_template(page.meta.get("template", "main.html"))
            context = plugins.on_page_context(context, page=page, config=self.config, nav=self.nav)
            return plugins.on_post_page(template.render(context), page=page, config=self.config)
        finally:
            page.active = False
            self.config._current_page = None

    @property
    def titles(self) -> str:
        """The navigation as a frame shows it, as one text."""
        return json.dumps([[page.url, page.title] for page in self.nav.pages])


def engine(config: MkDocsConfig) -> Engine:
    """Ready a site: gather its files, the generated ones among them, and lay out its navigation."""
    plugins = config.plugins
    files = get_files(config)
    env = config.theme.get_env()
    files.add_files_from_theme(env, config)
    files = plugins.on_files(files, config=config)
    set_exclusions(files, config)
    nav = plugins.on_nav(get_navigation(files, config), config=config, files=files)
    env = plugins.on_env(env, config=config, files=files)
    return Engine(config, files, nav, env, list(files.documentation_pages()))


def page_of(file: File) -> Page:
    """The page that was made known to a file."""
    if not isinstance(file.page, Page):
        raise TypeError(f"{file.src_uri} has no page")
    return file.page


class Warnings(logging.Handler):
    """What is warned of, kept to be said in another process."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[tuple[int, str]] = []

    def emit(self, record: logging.LogRecord) -> None:
        """Keep one."""
        self.said.append((record.levelno, record.getMessage()))
