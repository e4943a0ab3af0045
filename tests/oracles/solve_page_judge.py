"""What Chromium makes of a page to solve a puzzle on. Usage: solve_page_judge.py PAGE EXPECTED: a JSON file of what the page was made
from:
    {"title": "...", "lang": "he", "right_to_left": true, "key": true, "cells": [["A", null, ...], ...],
     "words": [{"shown": "LEEK", "letters": ["L", ...], "row": 0, "column": 0, "down": 0, "across": 1}, ...]}
Rows and columns count from 0; the words come in the order of the list. The puzzle is solved by mouse, finger and keyboard, and looked at
in both schemes of colour and on paper. Says what is wrong and ends with 1, or ends with 0. LODE_PICTURES names a folder for pictures of
the page, to be looked at."""
import base64
import collections
import json
import os
import pathlib
import re
import subprocess
import sys
import tempfile

from solve_page import KEYS, Page

faults = []
CONTROL = 2
DIRECTIONS = {(0, 1): "right", (0, -1): "left", (1, 0): "down", (-1, 0): "up",
              (1, 1): "down-right", (1, -1): "down-left", (-1, 1): "up-right", (-1, -1): "up-left"}


def check(good, *what):
    if not good:
        faults.append(" ".join(map(str, what)))


def cells_of(word):
    return [(word["row"] + i * word["down"], word["column"] + i * word["across"]) for i in range(len(word["letters"]))]


def judge_text(page):
    check(page.value("document.querySelectorAll('h1').length") == 1, "not one heading of the first level")
    check(page.value("document.querySelector('h1').textContent") == expected["title"], "the title is shown otherwise")
    check(page.value("document.title").startswith(expected["title"]), "the page is titled", page.value("document.title"))
    levels = page.value("[...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].map((e) => Number(e.localName[1]))")
    check(all(b <= a + 1 for a, b in zip(levels, levels[1:])), "a level of headings is skipped", levels)
    shown = page.value("[...document.querySelectorAll('#words bdi')].map((e) => e.textContent)")
    check(shown == [word["shown"] for word in expected["words"]], "words are shown otherwise", shown)
    letters = page.value("[...document.getElementById('grid').rows].map((r) => [...r.cells].map((c) =>"
                         "c.classList.contains('closed') ? null : c.textContent))")
    check(letters == expected["cells"], "the letters are others", letters)
    check(page.value("document.scripts.length") == 1, "a script was smuggled in")
    check(page.value("document.querySelectorAll('img, iframe, object, embed, link, audio, video, form').length") == 0, "markup was smuggled in")
    check(page.value("document.documentElement.lang") == "en", "the page's own language is not told")
    for part in ("h1", "#grid", "#words"):
        check(page.value(f"document.querySelector('{part}').lang") == expected["lang"], part, "is in another language")
    check(page.value("getComputedStyle(document.querySelector('#words')).direction") == ("rtl" if expected["right_to_left"] else "ltr"),
          "the list runs the wrong way")
    lefts = page.value("[...document.getElementById('grid').rows[0].cells].map((c) => c.getBoundingClientRect().left)")
    check(lefts == sorted(lefts), "column 1 is not leftmost")


def judge_solving(page, way, mark):
    """Every word is marked, some from their last letter; what that changes is looked at after each."""
    page.value("document.getElementById('again').click()")
    words = expected["words"]
    check(not any(page.found()) and page.rings("found") == [], way, "begins with words found")
    for i, word in enumerate(words):
        cells = cells_of(word)
        before = page.found()
        mark(cells[::-1] if i % 3 == 1 else cells)
        # One line can be two words, one of them turned round.
        twins = {j for j, other in enumerate(words) if other["letters"] in (word["letters"], word["letters"][::-1])}
        check(page.found() == [b or j in twins for j, b in enumerate(before)], way, "does not find", word["shown"], "but tells", page.told())
        check(word["shown"] in page.told(), way, "does not tell of", word["shown"], "but", page.told())
        if not before[i]:
            check((i, set(cells)) in page.rings("found"), way, "does not ring the letters of", word["shown"])
            left = page.found().count(False)
            said = {0: "all done", 1: "1 word is left"}.get(left, f"{left} words are left")
            check(said in page.told(), way, "tells", page.told(), "where", left, "are left")
    check(page.found() == [True] * len(words) and len(page.rings("found")) == len(words), way, "leaves words unfound")
    lines = page.value("[...document.querySelectorAll('#words bdi')].map((e) => getComputedStyle(e).textDecorationLine)")
    check(lines == ["line-through"] * len(words), way, "leaves words without a line through them")
    check(page.value("document.getElementById('count').textContent") == f"{len(words)} of {len(words)} found", way, "counts otherwise")


def open_cells():
    return [(r, c) for r, row in enumerate(expected["cells"]) for c, letter in enumerate(row) if letter is not None]


def arrow_from(cell, name):
    """Where an arrow key leads: to the next open cell that way, or nowhere."""
    down, across = {"ArrowLeft": (0, -1), "ArrowRight": (0, 1), "ArrowUp": (-1, 0), "ArrowDown": (1, 0)}[name]
    r, c = cell[0] + down, cell[1] + across
    while 0 <= r < len(expected["cells"]) and 0 <= c < len(expected["cells"][0]):
        if expected["cells"][r][c] is not None:
            return r, c
        r, c = r + down, c + across
    return cell


def walk(page, goal):
    """Goes to a cell by arrow keys, on a shortest way."""
    start = tuple(page.at())
    came = {start: None}
    queue = collections.deque([start])
    while queue and goal not in came:
        cell = queue.popleft()
        for name in KEYS:
            if name.startswith("Arrow") and arrow_from(cell, name) not in came:
                came[arrow_from(cell, name)] = (cell, name)
                queue.append(arrow_from(cell, name))
    keys = []
    while came[goal]:
        goal, name = came[goal]
        keys.append(name)
    for name in reversed(keys):
        page.press_key(name)


def judge_keys(page):
    page.visit()
    stops = page.value("[...document.querySelectorAll('button, select')].filter((e) => e.getClientRects().length).length") + 1
    reached = []
    for _ in range(stops):
        page.press_key("Tab")
        state = page.value("(() => { const e = document.activeElement, s = getComputedStyle(e);"
                           "return [e.id || e.localName, s.outlineStyle, parseFloat(s.outlineWidth)]; })()")
        reached.append(state[0])
        check(state[1] == "solid" and state[2] >= 2, "focus cannot be seen on", state)
    check(len(set(reached)) == stops and reached[0] == "td", "the Tab key reaches", reached)
    page.press_key("Tab")
    check(page.value("document.activeElement === document.body || document.activeElement.localName") in (True, "td"), "the Tab key is trapped")
    page.value("document.activeElement.blur(), window.getSelection().removeAllRanges()")
    page.visit()
    page.press_key("Tab")
    everywhere = open_cells()
    check(page.at() == list(everywhere[0]), "the grid is entered at", page.at())
    # Each key on its own, against the pattern for grids of the WAI-ARIA Authoring Practices ("Grid Pattern", keyboard interaction).
    for name, modifiers, goal in (("End", CONTROL, lambda r: everywhere[-1]), ("Home", 0, lambda r: min(x for x in everywhere if x[0] == r)),
                                  ("End", 0, lambda r: max(x for x in everywhere if x[0] == r)), ("PageUp", 0, None),
                                  ("PageDown", 0, None), ("Home", CONTROL, lambda r: everywhere[0])):
        was = page.at()
        page.press_key(name, modifiers)
        now = page.at()
        if goal:
            check(now == list(goal(was[0])), name, modifiers, "leads from", was, "to", now)
        else:
            check(now[1] == was[1] and tuple(now) in everywhere and abs(now[0] - was[0]) <= 10, name, "leads from", was, "to", now)
        check(page.value("document.querySelectorAll('#grid [tabindex=\"0\"]').length") == 1, "more than one cell takes part in tabbing")
    for name in ("ArrowUp", "ArrowLeft", "ArrowDown", "ArrowRight"):
        was = page.at()
        page.press_key(name)
        check(page.at() == list(arrow_from(was, name)), name, "leads from", was, "to", page.at())
        check(page.value("(() => { const r = document.activeElement.getBoundingClientRect();"
                         "return document.activeElement.contains(document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2)); })()"),
              "what has focus is hidden")

    def by_keys(cells):
        page.value(f"document.querySelector('#grid [tabindex=\"0\"]').focus()")
        walk(page, cells[0])
        page.press_key("Enter")
        check("other end" in page.told(), "Enter chooses nothing:", page.told())
        chosen = page.value("[...document.querySelectorAll('[aria-selected=true]')].map((c) => [c.parentElement.rowIndex, c.cellIndex])")
        check(chosen == [list(cells[0])], "chosen is told to be", chosen)
        walk(page, cells[-1])
        page.press_key(" ")

    judge_solving(page, "the keyboard", by_keys)
    page.press_key("Enter")
    page.press_key("Escape")
    check("aken back" in page.told() and page.value("document.querySelector('[aria-selected]') === null"), "Escape takes nothing back")


def judge_wrong_pairs(page):
    page.value("document.getElementById('again').click()")
    everywhere = open_cells()
    spelled = {tuple(word["letters"]) for word in expected["words"]} | {tuple(word["letters"][::-1]) for word in expected["words"]}
    letter = lambda cell: expected["cells"][cell[0]][cell[1]]
    knight = next((a, b) for a in everywhere for b in everywhere if (b[0] - a[0], b[1] - a[1]) == (1, 2))
    no_word = next((a, b) for a in everywhere for b in everywhere if b[0] == a[0] and b[1] == a[1] + 1 and (letter(a), letter(b)) not in spelled)
    across_gap = next(((a, b) for a in everywhere for b in everywhere
                       if a[0] == b[0] and b[1] > a[1] + 1 and any(letter((a[0], c)) is None for c in range(a[1], b[1]))), None)
    for pair, words in ((knight, "straight line"), (no_word, "Not on the list: " + letter(no_word[0]) + letter(no_word[1])),
                        (across_gap, "gap"), ((knight[0], knight[0]), "aken back")):
        if pair:
            page.mouse_click(pair[0])
            page.mouse_click(pair[1])
            check(words in page.told(), pair, "is told as", page.told())
            check(not any(page.found()) and page.rings("found") == [], pair, "finds something")
            check(page.value("document.querySelector('[aria-selected]') === null"), pair, "leaves something chosen")
    # A drag that ends far from the grid is taken back.
    first, second = cells_of(expected["words"][0])[:2]
    page.bring(first)
    page.mouse("mousePressed", *page.middle(first))
    page.mouse("mouseMoved", *page.middle(second))
    page.mouse("mouseMoved", 2, 2)
    page.mouse("mouseReleased", 2, 2)
    check("aken back" in page.told() and not any(page.found()), "a drag out of the grid is told as", page.told())


def judge_key(page):
    text = pathlib.Path(sys.argv[1]).read_text()
    if not expected["key"]:
        check(page.value("document.getElementById('show-key') === null && document.getElementById('key') === null"), "there is a key unasked")
        check("<th" not in text and 'data-ends="' not in text, "places stand in the file")
        return
    page.value("document.getElementById('again').click()")
    button = "document.getElementById('show-key')"
    visible = "document.getElementById('key').getClientRects().length > 0"
    check(page.value(button + ".getAttribute('aria-pressed')") == "false" and not page.value(visible), "the key is shown unasked")
    page.click(button)
    check(page.value(button + ".getAttribute('aria-pressed')") == "true" and page.value(visible), "the key is not shown")
    check(page.rings("shown") == [(i, set(cells_of(word))) for i, word in enumerate(expected["words"])], "the key's rings stand elsewhere")
    rows = page.value("[...document.querySelectorAll('#key tbody tr')].map((r) => [...r.cells].map((c) => c.textContent))")
    check(rows == [[word["shown"], str(word["row"] + 1), str(word["column"] + 1), DIRECTIONS[word["down"], word["across"]]]
                   for word in expected["words"]], "the table of the key says", rows)
    check(page.value("[...document.querySelectorAll('#key th')].every((e) => e.scope)"), "a heading of the table heads nothing")
    check(not any(page.found()), "the key finds words")
    page.picture("key")
    page.click(button)
    check(page.rings("shown") == [] and not page.value(visible), "the key does not go")


def judge_visits(page):
    """What is found is kept, and nothing breaks where it cannot be."""
    page.value("document.getElementById('again').click()")
    page.mouse_drag(cells_of(expected["words"][-1]))
    once, ringed = page.found(), page.rings("found")
    check(once[-1] and ringed != [], "nothing is found to be kept")
    check(page.visit_until(lambda: page.found() == once and page.rings("found") == ringed), "what was found is lost by another visit")
    check("kept" in page.told(), "nobody is told that it is kept:", page.told())
    page.value("document.getElementById('again').click()")
    check(page.visit_until(lambda: not any(page.found())), "what was begun again is back")
    for rubbish in ("null", "{", "[[1]]", "[[0,0,0,99999],[-1,0,0,0],[0.5,0,1,1]]", "7", '"x"', "[null]"):
        page.value(f"localStorage.setItem('letterlode-found-' + document.body.dataset.puzzle, {json.dumps(rubbish)})")
        page.visit()
        check(not any(page.found()) and "left" in page.told(), "rubbish is taken for words found", rubbish, page.told())
    page.value("document.getElementById('again').click()")
    script = page.call("Page.addScriptToEvaluateOnNewDocument",
                       source="Object.defineProperty(window, 'localStorage', {get() { throw new Error('refused'); }});")["identifier"]
    page.visit()
    page.mouse_drag(cells_of(expected["words"][0]))
    check(page.found()[0], "without storage nothing is found")
    page.call("Page.removeScriptToEvaluateOnNewDocument", identifier=script)
    page.visit()


def judge_hearing(page):
    """What an aid is told: roles and names as the browser hands them over."""
    word = expected["words"][0]
    page.value("document.getElementById('again').click()")
    page.mouse_drag(cells_of(word))
    nodes = page.call("Accessibility.getFullAXTree")["nodes"]
    by_role = collections.defaultdict(list)
    for node in nodes:
        if not node.get("ignored"):
            by_role[node.get("role", {}).get("value")].append(node.get("name", {}).get("value", ""))
    size = len(expected["cells"]), len(expected["cells"][0])
    check(by_role["grid"] == ["Letters"], "grids are heard as", by_role["grid"])
    check(len(by_role["gridcell"]) == size[0] * size[1], "cells that are heard:", len(by_role["gridcell"]))
    flat = [letter or "" for row in expected["cells"] for letter in row]
    inside = {r * size[1] + c for r, c in cells_of(word)}
    for i, (letter, name) in enumerate(zip(flat, by_role["gridcell"])):
        check(name.startswith(letter + ", found in ") and word["shown"] in name if i in inside else name == letter,
              "the letter", letter, "is heard as", name)
    check(len(by_role["status"]) == 1, "states are told in", len(by_role["status"]), "places")
    for role in ("button", "combobox"):
        check(all(name.strip() for name in by_role[role]), "a", role, "has no name")
    check(page.value("document.querySelectorAll('.closed[tabindex]').length") == 0, "a gap takes focus")
    moving = page.value("[...document.querySelectorAll('*')].filter((e) => { const s = getComputedStyle(e);"
                        "return s.transitionDuration !== '0s' || s.animationName !== 'none'; }).length")
    check(moving == 0, moving, "elements move by themselves")  # so that prefers-reduced-motion asks for nothing


# Relative luminance and contrast (WCAG 2.2), of text and of what must be seen besides (1.4.3, 1.4.11). Each with the ground that it has.
CONTRASTS = """(() => {
  const channel = (v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
  const parts = (c) => c.match(/[0-9.]+/g).map(Number);
  const luminance = (c) => { const [r, g, b] = parts(c); return 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b); };
  const ratio = (a, b) => { a = luminance(a), b = luminance(b); return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05); };
  const ground = (e) => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor;
    if (parts(c).length < 4 || parts(c)[3] > 0) return c; } return "rgb(255, 255, 255)"; };
  const found = [];
  for (const e of document.querySelectorAll("h1, h2, p, td, th, li, li span, label, button, select, option")) {
    if (e.getClientRects().length && e.textContent.trim())
      found.push([4.5, ratio(getComputedStyle(e).color, ground(e)), e.localName + " " + e.textContent.slice(0, 30)]);
  }
  const box = document.querySelector(".box");
  for (const e of document.querySelectorAll(".ring, #trail")) found.push([3, ratio(getComputedStyle(e).stroke, ground(box)), "ring"]);
  for (const e of document.querySelectorAll("#words .found bdi"))
    found.push([3, ratio(getComputedStyle(e).textDecorationColor, ground(e)), "line through " + e.textContent]);
  for (const e of document.querySelectorAll("button, select")) {
    if (!e.getClientRects().length) continue;
    const edge = getComputedStyle(e).borderTopColor;
    found.push([3, Math.max(ratio(edge, ground(e.parentElement)), ratio(edge, ground(e))), "edge of " + e.textContent.slice(0, 20)]);
    document.activeElement.blur();
    e.focus({focusVisible: true});
    found.push([3, ratio(getComputedStyle(e).outlineColor, ground(e.parentElement)), "focus on " + e.textContent.slice(0, 20)]);
  }
  const cell = document.querySelector("#grid [tabindex='0']");
  cell.focus({focusVisible: true});
  found.push([3, ratio(getComputedStyle(cell).outlineColor, ground(cell)), "focus on a letter"]);
  return found; })()"""
NARROW = """(() => [...document.body.querySelectorAll('*')].filter((e) => !e.closest('.field') && e.localName !== 'option')
  .map((e) => [e.getBoundingClientRect(), e]).filter(([r]) => r.width > 0 && (r.left < -0.5 || r.right > innerWidth + 0.5))
  .map(([, e]) => e.localName + '.' + e.className))()"""
TARGETS = """(() => [...document.querySelectorAll('button, select, #grid td:not(.closed)')].map((e) => e.getBoundingClientRect())
  .filter((r) => r.width > 0 && (r.width < 23.99 || r.height < 23.99)).length)()"""


def judge_looks(page):
    page.value("document.getElementById('again').click()")
    for word in expected["words"][:-1]:
        page.mouse_drag(cells_of(word))
    if expected["key"]:
        page.click("document.getElementById('show-key')")
    for scheme in ("light", "dark"):
        page.call("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": scheme}])
        page.settle()
        seen = page.value(CONTRASTS)
        check(len(seen) > 20, "hardly anything is seen")
        for least, contrast, what in seen:
            check(contrast >= least, scheme, "contrast", contrast, what)
        # 320 is what 1280 becomes at 400 percent (WCAG 2.2, 1.4.10).
        for width, height in ((1280, 900), (640, 450), (390, 844), (320, 256)):
            page.window(width, height)
            page.settle()
            check(page.value("document.scrollingElement.scrollWidth") <= width, "wider than", width)
            check(page.value(NARROW) == [], "beyond", width, "stand", page.value(NARROW))
            check(page.value(TARGETS) == 0, page.value(TARGETS), "targets are too small at", width)
            for goal in (open_cells()[0], open_cells()[-1], open_cells()[len(open_cells()) // 2]):
                page.value(f"document.getElementById('grid').rows[{goal[0]}].cells[{goal[1]}].focus({{focusVisible: true}})")
                check(page.value("(() => { const r = document.activeElement.getBoundingClientRect();"
                                 "return document.activeElement.contains(document.elementFromPoint(r.x + r.width / 2, r.y + r.height / 2)); })()"),
                      "a letter with focus is hidden at", width, goal)
            page.value("window.scrollTo(0, 0)")
            page.picture(f"{scheme}-{width}")
        page.window(1280, 900)
    # Text can be set larger without the browser's own means.
    size = "parseFloat(getComputedStyle(document.querySelector('#grid td')).fontSize)"
    once = page.value(size)
    page.value("(() => { const s = document.getElementById('size'); s.value = '2'; s.dispatchEvent(new Event('input')); })()")
    check(abs(page.value(size) - 2 * once) < 0.1, "letters are set", page.value(size), "and not twice", once)
    check(page.value("document.scrollingElement.scrollWidth") <= 1280, "large letters make the page wider")
    first = page.rings("found")
    check(first == [(i, set(cells_of(expected["words"][i]))) for i, _ in first], "large letters leave their rings")
    page.call("Emulation.setEmulatedMedia", features=[{"name": "forced-colors", "value": "active"}])
    page.settle()
    page.picture("forced")
    system = page.value("(() => { const e = document.createElement('p'); e.style.color = 'CanvasText'; document.body.append(e);"
                        "const c = getComputedStyle(e).color; e.remove(); return c; })()")
    check(set(page.value("[...document.querySelectorAll('.ring')].map((e) => getComputedStyle(e).stroke)")) == {system},
          "rings keep their colours where colours are forced")
    page.call("Emulation.setEmulatedMedia", features=[])


def judge_touch(page):
    page.call("Emulation.setTouchEmulationEnabled", enabled=True, maxTouchPoints=5)
    page.window(390, 844)
    page.visit()
    judge_solving(page, "a finger that is dragged", page.finger_drag)

    def taps(cells):
        page.tap(cells[0])
        page.tap(cells[-1])

    judge_solving(page, "a finger that taps", taps)
    # Where there is more than the window shows a finger can move it.
    large = page.value("(() => { const b = document.querySelector('.box'); return b.scrollWidth > b.clientWidth || b.offsetHeight > 0.8 * innerHeight; })()")
    offered = page.value("document.getElementById('move').getClientRects().length > 0")
    check(large == offered, "a grid that is", "larger" if large else "no larger", "than the window", "can" if offered else "cannot", "be moved")
    if offered:
        page.value("document.getElementById('again').click()")
        page.value("document.getElementById('move').click()")
        check(page.value("getComputedStyle(document.getElementById('grid')).touchAction") == "auto", "the grid does not move")
        taps(cells_of(expected["words"][0]))
        check(page.found()[0], "a grid that moves cannot be tapped")
    # A second finger means something else: nothing is marked.
    page.visit()
    page.value("document.getElementById('again').click()")
    cells = cells_of(expected["words"][0])
    page.bring(cells[len(cells) // 2])
    page.touch("touchStart", page.middle(cells[0]))
    page.touch("touchStart", page.middle(cells[0]), page.middle(cells[1]))
    page.touch("touchMove", page.middle(cells[-1]), page.middle(cells[1]))
    page.touch("touchEnd")
    check(not any(page.found()), "two fingers mark a word")
    page.call("Emulation.setTouchEmulationEnabled", enabled=False)
    page.window(1280, 900)


def printed(page, name, layout=True):
    """The text of each printed page, in lines as they stand or piece after piece, and how many pixels are coloured."""
    pdf = base64.b64decode(page.call("Page.printToPDF", preferCSSPageSize=True, printBackground=True, paperWidth=8.27, paperHeight=11.69)["data"])
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "page.pdf"
        file.write_bytes(pdf)
        if os.environ.get("LODE_PICTURES"):
            (pathlib.Path(os.environ["LODE_PICTURES"]) / f"{expected['title'].split()[-1]}-{name}.pdf").write_bytes(pdf)
        text = subprocess.run(["pdftotext", "-layout" if layout else "-raw", file, "-"], capture_output=True, text=True, check=True).stdout
        subprocess.run(["pdftoppm", "-r", "50", file, folder + "/page"], check=True)
        coloured = 0
        light = []
        for picture in sorted(pathlib.Path(folder).glob("*.ppm")):
            data = picture.read_bytes()
            width, height = map(int, re.match(rb"P6\s(\d+)\s(\d+)\s", data).groups())
            pixels = data[-3 * width * height:]
            coloured += sum(max(pixels[i:i + 3]) - min(pixels[i:i + 3]) > 8 for i in range(0, len(pixels), 3))
            light.append(sum(byte > 240 for byte in pixels) / len(pixels))
    return text.split("\f"), coloured, light


def judge_print(page):
    page.visit()
    page.value("document.getElementById('again').click()")
    page.call("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": "dark"}])
    for width in (1280, 320):
        page.window(width, 900)
        sheets, coloured, light = printed(page, f"print-{width}")
        check(coloured == 0, coloured, "pixels are coloured on paper")
        check(min(light) > 0.7, "the paper is not white:", light)
        whole = " ".join(" ".join(sheets).split())
        for label in ("Show the key", "Begin again", "Size of letters", "Move the grid", "Drag from"):
            check(label not in whole, "printed besides:", label)
        if not expected["right_to_left"]:
            check(" ".join(expected["title"].split()) in whole, "the title is not printed")
            # A clear picture of each row; clusters of other scripts come out of a PDF in ways of their own.
            if all(letter is None or letter.isascii() for row in expected["cells"] for letter in row):
                lines = ["".join(line.split()) for line in sheets[0].splitlines()]
                for row in expected["cells"]:
                    check("".join(letter or "" for letter in row) in lines, "a row is not printed whole on the first sheet:", row)
            pieces = "".join("".join(printed(page, "print", layout=False)[0]).split())  # a long word is broken
            for word in expected["words"]:
                check("".join(word["shown"].split()) in pieces, "not printed:", word["shown"])
        else:
            # Each letter is printed as often as it stands in the grid, the list and the title.
            wanted = collections.Counter(letter for row in expected["cells"] for letter in row if letter)
            for word in expected["words"]:
                wanted.update(character for character in word["shown"] if not character.isspace())
            there = collections.Counter(whole)
            for letter, count in wanted.items():
                check(there[letter] >= count, "printed", there[letter], "times and not", count, letter)
    if expected["key"]:
        page.value("document.getElementById('show-key').click()")
        sheets, coloured, _ = printed(page, "print-key")
        check(coloured == 0 and "Direction" in " ".join(sheets), "the key is not printed where it is shown")
    page.call("Emulation.setEmulatedMedia", features=[])
    page.window(1280, 900)


address = pathlib.Path(sys.argv[1]).resolve().as_uri()
expected = json.loads(pathlib.Path(sys.argv[2]).read_text())
with Page(address, expected["title"].split()[-1]) as browser:
    browser.window(1280, 900)
    browser.visit()
    judge_text(browser)
    judge_solving(browser, "a mouse that is dragged", browser.mouse_drag)

    def clicks(cells):
        browser.mouse_click(cells[0])
        browser.mouse_click(cells[-1])

    judge_solving(browser, "a mouse that clicks", clicks)
    judge_wrong_pairs(browser)
    judge_key(browser)
    judge_visits(browser)
    judge_hearing(browser)
    judge_looks(browser)
    judge_print(browser)
    judge_touch(browser)
    judge_keys(browser)
    browser.events = browser.all_events + browser.events
    check(browser.faults() == [], "the page complains:", browser.faults())
    check(set(browser.requests()) <= {address}, "the page asks for", browser.requests())
print("\n".join(faults[:20]), file=sys.stderr)
sys.exit(1 if faults else 0)
