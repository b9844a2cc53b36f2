"""The card as printed: one page on both papers, nothing cut off, drawn to the numbers of the JSON."""

from __future__ import annotations

import json
import math
import os
import random
import re
import subprocess
from pathlib import Path

import html5lib
import pytest

from browser import A4, LETTER, Browser, pages

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ["bell-foundry", "casting", "natural-gas", "blower-too-small"]
COMMAND = os.environ["JETWRIGHT_COMMAND"]
# Millimeters of a CSS pixel.
PIXEL = 25.4 / 96
# Names that a page must take as they are.
NAMES = [
    "<script>alert(1)</script> & <b>\\\"bold\\\"</b>",
    "\u05e4\u05e2\u05de\u05d5\u05df \u0641\u0631\u0646",
    "\U0001f525\U0001f514 kiln \U0001f469\u200d\U0001f527",
    "W" * 60,
]


@pytest.fixture(scope="module")
def browser():
    one = Browser()
    yield one
    one.close()


def answer(*arguments: str) -> str:
    return subprocess.run([COMMAND, "sheet", *arguments], capture_output=True, text=True, check=True).stdout


def card(path: Path, *more: str) -> str:
    return answer(str(path), "--card", "--format", "html", *more)


def example(name: str) -> Path:
    return ROOT / "examples" / f"{name}.toml"


def drawn(folder: Path) -> list[Path]:
    """Invented burners over what shops have, by a fixed seed, with names of every length."""
    draw = random.Random(int(os.environ.get("JETWRIGHT_SEED", "1")))
    text = example("bell-foundry").read_text()
    found = []
    for at in range(int(os.environ["JETWRIGHT_DRAWN"])):
        one = text.replace("1600 m", f"{draw.randrange(0, 3000, 100)} m")
        one = one.replace('name = "melt"', f'name = "{" ".join(["melt"] * draw.randrange(1, 12))}"')
        one = re.sub(r'(name = "melt[^\n]*\ngauge = )"[^"]*"', rf'\1"{draw.uniform(2, 3.6):.2f} psi"', one)
        one = re.sub(r'drill = "[^"]*"', f'drill = "number {draw.randrange(49, 56)}"', one)
        assert one != text
        if draw.random() < 0.3:
            one = one.replace("blast gate", "butterfly")
        path = folder / f"drawn-{at}.toml"
        path.write_text(one)
        found.append(path)
    return found


CUT_OFF = """(() => {
  const out = [];
  for (const card of document.querySelectorAll('.card')) {
    const box = card.getBoundingClientRect();
    for (const one of card.querySelectorAll('*')) {
      if (one.scrollWidth > one.clientWidth + 1 && one.clientWidth > 0 && !one.closest('svg') && one.tagName !== 'H1')
        out.push('wider: ' + one.tagName + one.className + ' ' + one.textContent.slice(0, 40));
      const rect = one.getBoundingClientRect();
      if (one.tagName === 'text' || !one.closest('svg'))
        if (rect.right > box.right + 1 || rect.bottom > box.bottom + 1 || rect.left < box.left - 1)
          out.push('outside: ' + one.tagName + ' ' + one.textContent.slice(0, 40));
    }
  }
  return out;
})()"""

SIZES = """[...document.querySelectorAll('.card *')].filter(one => [...one.childNodes].some(node =>
  node.nodeType === 3 && node.textContent.trim())).map(one => {
    let points = parseFloat(getComputedStyle(one).fontSize) * 0.75;
    if (one.tagName === 'text') points = parseFloat(one.getAttribute('font-size')) * one.getScreenCTM().d * 0.75;
    return [points, one.textContent.slice(0, 40), one.className.baseVal ?? one.className];
  })"""

LINES = """(name => [...document.querySelectorAll('.block')].map(block => {
  const line = block.querySelector('line.' + name);
  if (!line) return null;
  const matrix = line.getScreenCTM(), at = (x, y) => [matrix.a * x + matrix.e, matrix.d * y + matrix.f];
  const circle = line.closest('svg').querySelector('circle').getBoundingClientRect();
  return {from: at(line.x1.baseVal.value, line.y1.baseVal.value), to: at(line.x2.baseVal.value, line.y2.baseVal.value),
    top: circle.top, high: circle.height, stroke: parseFloat(line.getAttribute('stroke-width')) * matrix.a};
}))"""


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("paper", [A4, LETTER], ids=["A4", "Letter"])
def test_a_card_is_one_page(browser, tmp_path, name, paper):
    page = card(example(name))
    html5lib.HTMLParser(strict=True).parse(page)
    browser.open(page)
    assert browser.run(CUT_OFF) == []
    assert pages(browser.printed(paper), tmp_path / "card.pdf") == 1
    wide = page.replace("font: 12pt/1.18 Arial", "font: 12pt/1.18 'DejaVu Sans'")
    assert wide != page
    browser.open(wide)
    assert pages(browser.printed(paper), tmp_path / "wide.pdf") == 1, "in a font a seventh wider"


def test_cards_drawn_over_many_burners_are_one_page_each(browser, tmp_path):
    for path in drawn(tmp_path):
        browser.open(card(path))
        assert browser.run(CUT_OFF) == [], path.read_text()
        for paper in (A4, LETTER):
            assert pages(browser.printed(paper), tmp_path / "card.pdf") == 1, path.read_text()


def test_a_class_set_is_a_page_a_burner(browser, tmp_path):
    paths = [str(example(name)) for name in EXAMPLES]
    browser.open(answer(*paths, "--card", "--format", "html"))
    for paper in (A4, LETTER):
        assert pages(browser.printed(paper), tmp_path / "set.pdf") == len(paths)


@pytest.mark.parametrize("name", EXAMPLES)
def test_type_is_as_large_as_it_must_be(browser, name):
    browser.open(card(example(name)))
    sizes = browser.run(SIZES)
    assert min(points for points, *_ in sizes) >= 8.99, min(sizes)
    glance = [points for points, text, _ in sizes if text.startswith(("1 GAS OFF", "2 Air", "3 Purge", "4 "))]
    assert len(glance) >= 4 and min(glance) >= 24, glance
    body = [points for points, text, kind in sizes if kind not in ("origin", "halo") and not text.startswith("psi")]
    assert min(points for points in body) >= 11.4, "labels on a dial may be smaller, nothing else"


@pytest.mark.parametrize("name", EXAMPLES)
def test_needles_and_dampers_stand_where_the_numbers_say(browser, name):
    path = example(name)
    data = json.loads(answer(str(path), "--format", "json"))
    browser.open(card(path))
    needles, edges = browser.run(LINES + "('needle')"), browser.run(LINES + "('edge')")
    for block, needle, edge in zip(data["card"]["blocks"], needles, edges):
        if block["missing"]:
            assert needle is None and edge is None
            continue
        if data["built"]["gauge_unit"] == "psi" and not data["built"]["gauge_span_is_given"]:
            reading = block["shown_gauge_pressure_pa"] / 6894.757293168361
            span = next(span for span in (15.0, 30.0, 60.0, 100.0) if span * 6894.757 >= data["built"]["gauge_span_pa"] * 0.999)
            want = 135 + 270 * reading / span
            (x1, y1), (x2, y2) = needle["from"], needle["to"]
            got = math.degrees(math.atan2(y2 - y1, x2 - x1)) % 360
            # 0.3 mm at the end of a needle of 13 mm.
            assert abs((got - want + 180) % 360 - 180) < math.degrees(0.3 / 13), (name, got, want)
        if edge and data["built"]["damper_kind"] == "blast gate":
            high = edge["high"]
            want = edge["top"] + high * (1 - block["shown_damper_opening"])
            assert abs(edge["from"][1] - want) * PIXEL < 0.3 + 0.35, (edge, want)


@pytest.mark.parametrize("name", EXAMPLES)
@pytest.mark.parametrize("units", ["inch", "metric"])
def test_every_number_shown_is_that_of_the_text(browser, name, units):
    path = example(name)
    browser.open(card(path, "--units", units))
    words = browser.run("document.body.innerText + ' ' + [...document.querySelectorAll('svg text')].map(t => t.textContent).join(' ')")
    text = answer(str(path), "--card", "--units", units)
    printed = re.findall(r"gauge +([0-9.]+)|damper +([0-9]+)", text)
    assert printed
    for gauge, damper in printed:
        shown = "OPEN" if damper == "100" else gauge or damper
        assert f" {shown} " in f" {words} ", shown


@pytest.mark.parametrize("name", NAMES, ids=["markup", "right-to-left", "emoji", "long"])
def test_no_name_breaks_a_card(browser, tmp_path, name):
    text = example("bell-foundry").read_text()
    text = text.replace("Night-school bell foundry, crucible furnace (invented)", name)
    text = text.replace('name = "melt"', f'name = "{name}"')
    path = tmp_path / "named.toml"
    path.write_text(text)
    page = card(path)
    html5lib.HTMLParser(strict=True).parse(page)
    assert "<script" not in page and "http" not in page
    browser.open(page)
    assert browser.run(CUT_OFF) == []
    for paper in (A4, LETTER):
        assert pages(browser.printed(paper), tmp_path / "card.pdf") == 1


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_phone_scrolls_one_way_only(browser, name):
    browser.open(card(example(name)), wide=320, media="screen")
    assert browser.run("document.documentElement.scrollWidth") <= 320


def test_ink_and_paper_differ_enough(browser):
    """WCAG 2.2, 1.4.3: 4.5 to 1; both pairs of colors of the page."""

    def light(color: str) -> float:
        channels = [int(color[1 + at : 2 + at] * 2, 16) / 255 for at in range(3)]
        linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in channels]
        return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]

    pairs = re.findall(r"--ink: (#\w{3}); --paper: (#\w{3})", card(example("bell-foundry")))
    assert len(set(pairs)) == 2
    for ink, paper in pairs:
        bright, dark = sorted((light(ink), light(paper)), reverse=True)
        assert (bright + 0.05) / (dark + 0.05) >= 4.5
