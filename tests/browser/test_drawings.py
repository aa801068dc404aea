"""Labels of drawings as a browser lays them out: on the sheet, on no line, and not on one another."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from latchside.drawings import COMPUTED
from latchside.drawings.inline import inlined
from latchside.library import Library, Record
from latchside.pages.drawn import drawn

PHONE = 390
# Of each line of a label, the box from the height of capitals to the foot; what a later shape covers does not count.
COLLISIONS = r"""() => {
  const found = [];
  const painted = (shape) => shape.getAttribute('fill') && shape.getAttribute('fill') !== 'none';
  const inside = (shape, point) => shape.isPointInFill(point.matrixTransform(shape.getCTM().inverse()));
  for (const svg of document.querySelectorAll('svg')) {
    const all = [...svg.querySelectorAll('*')], name = svg.getAttribute('aria-label');
    const drawn = all.filter((one) => one instanceof SVGGeometryElement && !one.closest('defs'));
    const lines = drawn.filter((one) => one.getAttribute('stroke') && one.getAttribute('stroke-width') !== '0');
    const sheet = svg.getBoundingClientRect(), wide = sheet.width, labels = [...svg.querySelectorAll('text')];
    const boxOf = new Map(lines.map((one) => [one, one.getBoundingClientRect()]));
    const near = (line, from, to) => { const box = boxOf.get(line), x = sheet.left, y = sheet.top, wide = 4;
      return box.left - x < to.x + wide && box.right - x > from.x - wide &&
        box.top - y < to.y + wide && box.bottom - y > from.y - wide; };
    for (const label of labels) {
      const parts = label.querySelector('tspan') ? [...label.querySelectorAll('tspan')] : [label];
      for (const part of parts.filter((one) => one.textContent.trim())) {
        const size = parseFloat(getComputedStyle(part).fontSize), foot = part.getStartPositionOfChar(0).y;
        const last = part.getExtentOfChar(part.getNumberOfChars() - 1), way = label.getCTM();
        const from = new DOMPoint(part.getExtentOfChar(0).x, foot - 0.72 * size).matrixTransform(way);
        const to = new DOMPoint(last.x + last.width, foot).matrixTransform(way);
        if (from.x < 0 || to.x > wide + 1) found.push(`${name}: ${part.textContent} runs off the sheet`);
        const points = [];
        for (let x = from.x; x <= to.x; x += 1.5) {
          for (let y = from.y; y <= to.y; y += 1.5) points.push(new DOMPoint(x, y));
        }
        const at = all.indexOf(label);
        const over = (line) => drawn.filter((one) => painted(one) && all.indexOf(one) > all.indexOf(line));
        const seen = (line, point) => line.isPointInStroke(point.matrixTransform(line.getCTM().inverse())) &&
          !over(line).some((one) => all.indexOf(one) < at && inside(one, point));
        const crossed = lines.some((line) => near(line, from, to) && points.some((point) => seen(line, point)));
        if (crossed) found.push(`${name}: ${part.textContent} on a line`);
      }
    }
    const boxes = labels.map((one) => [one.textContent, one.getBoundingClientRect()]);
    for (const [index, [words, a]] of boxes.entries()) for (const [others, b] of boxes.slice(index + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      if (across > 1 && down > 4) found.push(`${name}: ${words} on ${others}`);
    }
  }
  return found;
}"""


@pytest.mark.slow
def test_labels_lie_on_no_line_and_not_on_one_another(browser: Browser, shipped_library: Library) -> None:
    """Every drawing in each of its forms, with the values of each device that names it, for values differ in length."""
    devices = shipped_library.of("device")
    wanted: list[tuple[str, Record | None]] = [(id_, None) for id_ in (*COMPUTED, *shipped_library.pictures)]
    wanted += [(id_, device) for device in devices for id_ in device.listed("drawings") if id_ not in COMPUTED]
    shown = (drawn(shipped_library, id_, device) for id_, device in wanted)
    figures = "".join(f"<p>{inlined(one.drawing)}</p>" for one in shown if one)
    page = browser.new_page(viewport={"width": PHONE, "height": 844})
    style = "body{margin:16px;font-family:sans-serif}svg{display:block;width:100%;height:auto}"
    page.set_content(f"<!doctype html><meta charset=utf-8><style>{style}</style>{figures}")
    assert page.locator("svg").count() >= 40
    assert page.evaluate(COLLISIONS) == []
    page.close()
