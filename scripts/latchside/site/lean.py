"""Scripts, sheets of styles and pages without what only their writers read: comments, indentation, line ends.

Nothing is renamed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from itertools import groupby
from operator import itemgetter

_TOKEN = re.compile(
    r"""(?P<comment>/\*.*?\*/|//[^\n]*)|(?P<text>"(?:[^"\\\n]|\\.)*"|'(?:[^'\\\n]|\\.)*')|(?P<tick>`)|(?P<sign>[{}])
    |(?P<pattern>(?:(?<=[(,=:\[!&|?{};>\n])|(?<=[(,=:\[!&|?{};>]\ )|(?<=return\ ))
      /(?![*/])(?:[^/\\\[\n]|\\.|\[(?:[^\]\\\n]|\\.)*\])+/[a-z]*)|(?P<code>[^"'`{}/]+|.)""",
    re.DOTALL | re.VERBOSE,
)
_TEMPLATE = re.compile(r"(?:[^`\\$]|\\.|\$(?!\{))*(?:\$\{|`)", re.DOTALL)
"""The text of a template, up to its end or to the next value in it."""
_SPACED = re.compile(r" ?(=>|[!=]==?|\?\?=?|&&|\|\||[?:=,;{}()\[\]<>*]) ?")
"""Signs that need no space round them. Plus and minus do: `a + +b` is not `a ++b`."""
_INDENT = re.compile(r"^[ \t]+|[ \t]+$", re.MULTILINE)
_REMARK = re.compile(r"/\*.*?\*/", re.DOTALL)
_LINE_END = re.compile(r"\s*\n\s*")
_NO_END = re.compile(r"(?<=[{};,])\n|\n(?=\})| (?=\{)|;(?=\n?\})")
"""Where a sheet needs neither a line end nor a space, nor a semicolon after its last line."""
_UNREAD = re.compile(
    r'[ \t]*(?:<(?:link rel="(?:prev|next)"|meta name="generator")[^<>]*>'
    r"|<script>(?:var target=[^<]*__tabbed_|__md_scope=).*?</script>)\n?"
)
"""What no page needs: hints for other browsers, the theme's script for tabs, and one that `latchside.js` has too."""
_BROKEN = re.compile(r"[ \t]*\n\s*")
_EMPTY = re.compile(r"\n{2,}")
_BETWEEN = re.compile(
    r"(?<=>)\n(?=</?(?:p|li|[uod]l|d[td]|t[rdh]|thead|tbody|table|h[1-6]|figcaption|link|meta|title)\b)"
)
"""Where a line ends before something that begins a line of its own anyway."""
_SCRIPT = re.compile(r"(<script\b.*?</script>)", re.DOTALL)
_PLAIN = "!#$*+:;=?@[\\]^_`{|}~"
"""Signs that mean nothing to a browser, in a text or in a quoted attribute."""
_NUMBERED = re.compile(f"&#(?:{'|'.join(str(ord(sign)) for sign in _PLAIN)});")


def tokens(script: str) -> Iterator[tuple[str, str]]:
    """A script in pieces, each with its kind: comment, text, pattern, code, or a part of a template.

    The parts of a template are `html` where it is markup and `template` where it is not, each with the signs that
    open and close it; the code of the values in it stands between them as code `within`.
    """
    at, open_kinds, depths = 0, list[str](), list[int]()
    before = ""
    while at < len(script):
        found = _TOKEN.match(script, at)
        kind, text = (found.lastgroup or "", found[0]) if found else ("code", script[at])
        ends = text == "}" and depths and depths[-1] == 0
        if kind == "tick" or ends:
            if kind == "tick":
                open_kinds.append("html" if before.endswith("html") else "template")
                depths.append(0)
            part = _TEMPLATE.match(script, at + 1)
            text += part[0] if part else script[at + 1 :]
            kind = open_kinds[-1]
            if not text.endswith("${"):
                open_kinds.pop()
                depths.pop()
        elif kind == "sign":
            kind = "code"
            if depths:
                depths[-1] += 1 if text == "{" else -1
        if kind == "code" and depths:
            kind = "within"
        yield kind, text
        before = text
        at += len(text)


def lean(script: str) -> str:
    """The script as it is served.

    Comments are taken out, and line ends with their indents where they mean nothing: in code, and in markup, where
    one space does for them. A script in which another text runs over several lines keeps its lines.
    """
    parts = [(kind, text) for kind, text in tokens(script) if kind != "comment"]
    runs = groupby(parts, key=itemgetter(0))
    made = "".join(_tight(kind, "".join(text for _, text in run)) for kind, run in runs)
    if any(kind == "template" and "\n" in text for kind, text in parts):
        return made
    return _joined(_EMPTY.sub("\n", _INDENT.sub("", made)).lstrip("\n").split("\n"))


def lean_sheet(sheet: str) -> str:
    """The sheet of styles as it is served; no text in ours holds a remark or a brace."""
    return _NO_END.sub("", _LINE_END.sub("\n", _REMARK.sub("", sheet)).strip()) + "\n"


def _tight(kind: str, text: str) -> str:
    """A piece of a script without spaces that mean nothing."""
    if kind in ("html", "within"):
        text = _BROKEN.sub(" ", text)
    return _SPACED.sub(r"\1", text) if kind == "code" else text


def _joined(lines: Iterable[str]) -> str:
    """Lines put together where the line end means nothing: after an opening, before a closing, within an expression."""
    made = [""]
    for line in lines:
        before = made[-1]
        if "//" in before:
            made.append(line)
        elif line.startswith((")", "]", "}")):
            made[-1] = before.removesuffix(",") + line
        elif not before or before.endswith(("(", "[", "{", ",", ";")) or line.startswith(("?", ":", "&", "|", ".")):
            made[-1] = before + line
        else:
            made.append(line)
    return "\n".join(made)


def _sign(found: re.Match[str]) -> str:
    return chr(int(found[0][2:-1]))


def lean_page(page: str) -> str:
    """The page as it is served; one that shows text as it was typed keeps its indents and empty lines.

    Signs that were written as numbers only so that Markdown would not read them stand as themselves.
    """
    page = _UNREAD.sub("", page)
    page = "".join(part if part.startswith("<script") else _NUMBERED.sub(_sign, part) for part in _SCRIPT.split(page))
    if "<pre" in page or "<textarea" in page:
        return page
    lines = (line.strip(" \t") for line in page.split("\n"))
    return _BETWEEN.sub("", "\n".join(line for line in lines if line))
