"""A new drawing to draw over: an SVG file of the house form, with its words as blanks."""

from __future__ import annotations

from latchside.blanks import BLANK

SHEET = f"""\
<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 360 200" width="360" height="200" font-family="sans-serif">
  <title>{BLANK}</title>
  <desc>{BLANK}</desc>
  <g id="front">
    <text id="heading" x="12" y="20" font-size="14" fill="#111111" font-weight="700">{BLANK}</text>
    <rect id="frame" x="92" y="40" width="176" height="140" fill="#e3e8e8" stroke="#111111" stroke-width="1.75"/>
    <rect id="sensor" x="160" y="60" width="40" height="20" rx="3" fill="#ffffff" stroke="#111111" stroke-width="1.75"/>
    <g id="label-sensor">
      <line x1="270" y1="60" x2="196" y2="70" stroke="#111111" stroke-width="1"/>
      <circle cx="196" cy="70" r="2" fill="#111111"/>
      <text id="sensor-word" x="274" y="64" font-size="13" fill="#111111"><tspan x="274" y="64">{BLANK}</tspan></text>
    </g>
  </g>
</svg>
"""
