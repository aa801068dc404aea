"""The pages of a project while it is written: each made when it is asked for, with what is wrong with it on top."""

from __future__ import annotations

from collections.abc import Iterable
from contextlib import suppress
from dataclasses import dataclass, field
from functools import lru_cache, partial
from pathlib import Path

from markupsafe import Markup
from mkdocs.structure.files import File

from latchside.escape import safe
from latchside.findings import Finding
from latchside.kinds import KINDS
from latchside.library import Library
from latchside.library.state import State
from latchside.messages import messages
from latchside.pages.finder import finder_index
from latchside.pages.render import Task, Writer
from latchside.project import Checked, read_library
from latchside.read.yaml_text import read_text
from latchside.root import schema_folder
from latchside.schemas import load_schemas
from latchside.site import adapter
from latchside.site.build import configured, theme_template
from latchside.site.engine import Engine, engine
from latchside.site.finish import OFF, WORKER, finished_page
from latchside.site.kept import Kept, by_task, general, kept_at
from latchside.site.written import WrittenPage

LIVE = Path(__file__).parent / "live"
HEAD = Markup(
    '<link rel="stylesheet" href="/preview/preview.css"><script type="module" src="/preview/preview.js"></script>'
)
_REGION = Markup('<aside class="ls-preview{}" aria-label="{}" data-ls-preview="{}" data-version="{}">{}</aside>')
message = messages(__name__)


@dataclass
class Preview:
    """A project as it stands at the moment. `version` goes up whenever a page may have changed.

    `checked` holds what can be said of each record by itself, `elsewhere` what the check of the whole library
    found, that of each record included; None until it has.
    """

    root: Path
    version: int = 0
    checked: Checked = field(init=False)
    elsewhere: tuple[Finding, ...] | None = None
    failed: bool = False
    _engine: Engine = field(init=False)
    _tasks: dict[str, Task] = field(init=False)
    _task_of: dict[str, str] = field(default_factory=dict)
    _made: dict[str, int] = field(default_factory=dict)
    _files: dict[str, File] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self._read = lru_cache(maxsize=5000)(read_text)
        config = configured(self.root, self.root / ".cache" / "preview")  # nothing is written there
        self._edit_base = config.extra.get("edit_base") or ""
        config.plugins.on_startup(command="serve", dirty=False)
        config = config.plugins.on_config(config)
        config.plugins.on_pre_build(config=config)
        self.look()
        adapter.show(self.library, self._all_pages(general(self.root, str(config.extra))))
        self._engine = engine(config)
        self._files = {file.dest_uri: file for file in self._engine.files}
        for page in self._engine.nav.pages:
            if page.title is None:
                self._engine.read(page.file)

    @property
    def library(self) -> Library:
        """All records that are sound by themselves."""
        return self.checked.library

    def look(self) -> None:
        """Look at the records again; what was read before and has not changed is not read again."""
        schemas = load_schemas(schema_folder(self.root)) if not self.version else self.library.schemas
        self.checked = read_library(self.root, schemas=schemas, read=self._read)
        self.version, self.elsewhere, self.failed = self.version + 1, None, False
        adapter.show(self.library)
        self._tasks = dict(Writer(self.library, self._edit_base).tasks())
        for name in self._tasks.keys() - self._task_of.values() if self._files else ():
            with suppress(Exception):  # whoever asks for its page is told why
                self._renew(name)

    def _all_pages(self, rests_on: str) -> dict[str, str]:
        kept = Kept(None if self.checked.errors else kept_at(self.root), rests_on, State(self.library))
        pages: dict[str, str] = {}
        for name, part in by_task({name: partial(_or_nothing, task) for name, task in self._tasks.items()}, kept):
            pages |= part
            self._task_of |= dict.fromkeys((path for path, _ in part), name)
            self._made[name] = self.version if part else 0
        kept.write()
        return dict(sorted(pages.items()))

    def _renew(self, name: str) -> None:
        """Make the files of a task anew, unless they are of this version."""
        if self._made.get(name) == self.version:
            return
        for path, text in self._tasks[name]():
            self._task_of[path] = name
            file = self._engine.files.get_file_from_path(path)
            if file is None:
                self._engine.files.append(file := File.generated(self._engine.config, path, content=text))
                self._files[file.dest_uri] = file
            file.content_string = text
        self._made[name] = self.version

    # -- what is served ------------------------------------------------------------------------------------------

    def served(self, path: str) -> tuple[str, bytes] | None:
        """The name of the file at a path of the site, and what is in it; None where nothing stands there."""
        dest = f"{path}index.html" if path.endswith("/") or not path else path
        own = self._of_its_own(dest)
        if own is not None:
            return dest, own
        file = self._files.get(dest)
        name = self._task_of.get(file.src_uri) if file else path  # a record's task is named by its address
        if self._unsound(path) and name not in self._tasks:
            return dest, self._broken(path, Markup("<p>{}</p>").format(message("broken")))
        if name not in self._tasks and (file is None or name is not None):
            return None
        try:
            if name:
                self._renew(name)
            file = self._files.get(dest)
            if file is None:
                return None
            return dest, self._page(file, path) if file.is_documentation_page() else file.content_bytes
        except Exception as error:
            words = message("not-made", error=f"{type(error).__name__}: {error}")
            return dest, self._broken(path, Markup("<p>{}</p>").format(words))

    def missing(self) -> bytes:
        """The page for wrong addresses."""
        html = theme_template("404.html", self._engine)
        return finished_page(html.replace("</body>", f"{HEAD}{self.region('404.html')}</body>")).encode("utf-8")

    def _page(self, file: File, path: str) -> bytes:
        if file.page is None:
            WrittenPage(None, file, self._engine.config)
        page = self._engine.read(file)
        page.content = f"{HEAD}{self.region(path)}{page.content}"
        return finished_page(self._engine.framed(page)).encode("utf-8", "xmlcharrefreplace")

    def _broken(self, path: str, words: Markup) -> bytes:
        title = message("broken-title")
        text = f"---\ntitle: {safe(title)}\n---\n\n# {safe(title)} {{: #top }}\n\n{words}\n"
        file = File.generated(self._engine.config, f"{path}index.md", content=text)
        WrittenPage(None, file, self._engine.config)
        return self._page(file, path)

    def _of_its_own(self, dest: str) -> bytes | None:
        """Files that a build makes last, as a preview has them: nothing is saved, and written pages are not found."""
        if dest == "finder.json":
            return finder_index(self.library, {}).encode("utf-8")
        if dest == "offline.json":
            return OFF.encode("utf-8")
        if dest in ("sw.js", "sw-off.js"):
            return (WORKER / "sw-off.js").read_bytes()
        if dest in ("preview/preview.js", "preview/preview.css"):
            return (LIVE / Path(dest).name).read_bytes()
        return None

    # -- findings ------------------------------------------------------------------------------------------------

    def region(self, path: str) -> Markup:
        """What was found, for the top of a page: of its own record first."""
        known = sorted(set(self.checked.findings if self.elsewhere is None else self.elsewhere))
        own = [one for one in known if _address_of(one.file) and path.startswith(_address_of(one.file) or "/")]
        others = [one for one in known if one not in own]
        parts = [_listed(own) if own else Markup("<p>{}</p>").format(message("none-here"))]
        if others:
            told = message("elsewhere", count=len(others))
            parts.append(Markup("<details><summary>{}</summary>{}</details>").format(told, _listed(others)))
        if self.failed:
            parts.append(Markup("<p>{}</p>").format(message("check-failed")))
        elif self.elsewhere is None:
            parts.append(Markup("<p>{}</p>").format(message("checking")))
        elif not others:
            parts.append(Markup("<p>{}</p>").format(message("none-elsewhere")))
        shown = Markup("").join(parts)
        return _REGION.format(" ls-preview-bad" if own else "", message("about"), path, self.version, shown)

    def _unsound(self, path: str) -> bool:
        """Whether a record stands at an address and cannot be shown."""
        return any(
            path.startswith(KINDS[kind].address.format(id=id_))
            for kind, id_ in self.library.unsound
            if kind in KINDS and KINDS[kind].own_page
        )


def _or_nothing(task: Task) -> list[tuple[str, str]]:
    """What a task makes; nothing where it fails, and whoever asks for its page is told why."""
    try:
        return task()
    except Exception:
        return []


def _address_of(file: str) -> str | None:
    """The address of the page of the record in a file; None where it has no page of its own."""
    folder, _, name = file.rpartition("/")
    return next(
        (k.address.format(id=name.rpartition(".")[0]) for k in KINDS.values() if k.folder == folder and k.own_page),
        None,
    )


def _listed(findings: Iterable[Finding]) -> Markup:
    rows = (
        Markup('<li class="{}"><code>{}:{}:{}</code> {}</li>').format(
            one.level, one.file, one.place.line, one.place.column,
            message("finding", found=one.found, expected=one.expected, action=one.action),
        )
        for one in findings
    )  # fmt: skip
    return Markup("<ul>{}</ul>").format(Markup("").join(rows))
