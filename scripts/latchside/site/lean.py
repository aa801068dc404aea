"""Scripts and pages without what only their writers read: comments, indentation, line ends. Nothing is renamed."""

from __future__ import annotations

import re
from collections.abc import Iterable

_EXPLAINED = re.compile(r"/\*\*.*?\*/[ \t]*", re.DOTALL)
_ASIDE = re.compile(r"^[ \t]*//.*\n", re.MULTILINE)
_BESIDE = re.compile(r"(?<=[;{,)\]}]) +// [^\"'`\n]*$", re.MULTILINE)
"""A comment after a statement. One that holds a quotation mark is left: it might be the end of a text."""
_TEXT = re.compile(r"""("(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`)""")
_SPACED = re.compile(r" ?(=>|[!=]==?|\?\?=?|&&|\|\||[?:=,;{}()\[\]<>*]) ?")
"""Signs that need no space round them. Plus and minus do: `a + +b` is not `a ++b`."""
_INDENT = re.compile(r"^[ \t]+|[ \t]+$", re.MULTILINE)
_UNREAD = re.compile(r'[ \t]*<(?:link rel="(?:prev|next)"|meta name="generator")[^<>]*>\n?')
_EMPTY = re.compile(r"\n{2,}")
_BETWEEN = re.compile(
    r"(?<=>)\n(?=</?(?:p|li|[uod]l|d[td]|t[rdh]|thead|tbody|table|h[1-6]|figcaption|link|meta|title)\b)"
)
"""Where a line ends before something that begins a line of its own anyway."""
_SCRIPT = re.compile(r"(<script\b.*?</script>)", re.DOTALL)
_PLAIN = "!#$*+:;=?@[\\]^_`{|}~"
"""Signs that mean nothing to a browser, in a text or in a quoted attribute."""
_NUMBERED = re.compile(f"&#(?:{'|'.join(str(ord(sign)) for sign in _PLAIN)});")


def lean(script: str) -> str:
    """The script as it is served.

    Only comments that open with `/**`, lines that are nothing but a comment, and comments after a statement are taken
    out; and a script in which a text runs over several lines is left as it stands, because there an indent may be part
    of the text.
    """
    if any(line.count("`") % 2 for line in script.splitlines()):
        return script
    bare = _BESIDE.sub("", _ASIDE.sub("", _EXPLAINED.sub("", script)))
    return _joined(map(_tight, _EMPTY.sub("\n", _INDENT.sub("", bare)).lstrip("\n").split("\n")))


def _tight(line: str) -> str:
    """The line without spaces that mean nothing; as it stands where it cannot be told for sure what is a text in it."""
    parts = _TEXT.split(line)
    code, texts = parts[::2], parts[1::2]
    unsure = any(sign in part for part in code for sign in "\"'`/")
    if unsure or any(text.count("{") != text.count("}") for text in texts):
        return line
    return "".join(part if at % 2 else _SPACED.sub(r"\1", part) for at, part in enumerate(parts))


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
