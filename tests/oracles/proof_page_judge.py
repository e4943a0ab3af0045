"""What Chromium makes of a proof page. Usage: proof_page_judge.py PAGE EXPECTED: a JSON file of what the page was made from:
    {"width": 203.2, "height": 254, "second": true, "heading": "...", "films": 3,
     "words": [{"shown": "LEEK", "row": 1, "column": 1, "cells": [[1, 1], ...]}, ...]}
Says what is wrong and ends with 1, or ends with 0. LODE_PICTURES names a folder for pictures of the page, to be looked at."""
import base64
import json
import math
import os
import pathlib
import re
import subprocess
import sys
import tempfile

from browser import Browser

faults = []
MM_AN_INCH = 25.4
RIM = 10  # mm about the printed blank


def check(good, *what):
    if not good:
        faults.append(" ".join(map(str, what)))


def picture(browser, name):
    folder = os.environ.get("LODE_PICTURES")
    if folder:
        taken = base64.b64decode(browser.call("Page.captureScreenshot", format="png")["data"])
        (pathlib.Path(folder) / (name + ".png")).write_bytes(taken)


def shown(browser, selector):
    """For each element whether it is drawn."""
    return browser.value(f"[...document.querySelectorAll({json.dumps(selector)})].map((e) => e.getClientRects().length > 0)")


def judge_text(page, expected):
    check(page.value("document.querySelector('h1').textContent") == expected["heading"], "the heading is shown otherwise")
    check(page.value("document.title") == expected["heading"] + ": proof", "the title is", page.value("document.title"))
    words = page.value("[...document.querySelectorAll('.key bdi')].map((e) => e.textContent)")
    check(words == [word["shown"] for word in expected["words"]], "words are shown otherwise:", words)
    check(page.value("document.scripts.length") == 1, "a script was smuggled in")
    check(page.value("document.querySelectorAll('img, iframe, object, embed, link, audio, video').length") == 0, "markup was smuggled in")


def judge_films(page, expected):
    count = expected["films"]
    check(shown(page, "g[id^=film-]") == [True] * count, "not all films are shown at first")
    for number in range(1, count + 1):
        box = f"document.querySelector('input[name=film][value=\"{number}\"]')"
        group = f"#film-{number}"
        colour = page.value(f"document.querySelector('{group}').getAttribute('fill')")
        swatch = page.value(f"{box}.parentElement.querySelector('rect').getAttribute('fill')")
        check(colour == swatch, "film", number, "has a swatch of another colour")
        page.click(f"{box}.parentElement")
        check(shown(page, group) == [False], "film", number, "is not hidden")
        check(sum(shown(page, "g[id^=film-]")) == count - 1, "film", number, "takes others with it")
        page.click(box)
        check(shown(page, group) == [True], "film", number, "does not come back")


def judge_sides(page):
    places = """(() => { const plate = document.querySelector('.plate svg').getBoundingClientRect();
        return [...document.querySelectorAll('g[id^=film-] path')].map((e) => { const r = e.getBoundingClientRect();
        return [(r.left - plate.left) / plate.width, (r.right - plate.left) / plate.width, (r.top - plate.top) / plate.height]; }); })()"""
    order = "[...document.querySelectorAll('g[id^=film-]')].map((e) => e.id)"
    by_name = "Object.fromEntries([...document.querySelectorAll('g[id^=film-] path')].map((e, i) => [e.parentElement.id + e.getAttribute('d'), i]))"
    front, front_order, front_names = page.value(places), page.value(order), page.value(by_name)
    page.click("document.querySelector('input[value=back]').parentElement")
    back, back_order, back_names = page.value(places), page.value(order), page.value(by_name)
    check(back_order == front_order[::-1], "what lies in front does not lie behind from the other side")
    check(front_names.keys() == back_names.keys(), "another drawing on the other side")
    for name, i in front_names.items():
        a, b = front[i], back[back_names[name]]
        check(max(abs(a[0] - (1 - b[1])), abs(a[1] - (1 - b[0])), abs(a[2] - b[2])) < 1e-3, "a piece is not mirrored", a, b)
    picture(page, "back")
    page.click("document.querySelector('input[value=front]').parentElement")
    check(page.value(places) == front, "the front does not come back")
    check(page.value(order) == front_order, "the front's order does not come back")


def judge_key(page, expected):
    places = "#key > g"
    words = expected["words"]
    check(not any(shown(page, places)), "the key is shown unasked")
    page.click("document.querySelector('input[name=key]')")
    check(shown(page, places) == [True] * len(words), "the key lacks words")
    picture(page, "key")
    starts = page.value("""[...document.querySelectorAll('#key > g')].map((g) => { const c = g.querySelector('circle.over').getBoundingClientRect();
        return [c.x + c.width / 2, c.y + c.height / 2]; })""")
    letters = page.value("""Object.fromEntries([...document.querySelectorAll('g[id^=film-] path title')].map((t) => {
        const r = t.parentElement.getBoundingClientRect();
        return [t.textContent.replace(/^.* at /, ''), [r.x + r.width / 2, r.y + r.height / 2]]; }))""")
    letters = {where: place for where, place in letters.items() if re.fullmatch(r"row [0-9]+, column [0-9]+", where)}
    for word, start in zip(words, starts):
        nearest = min(letters, key=lambda where: math.dist(letters[where], start))
        check(nearest == f"row {word['row']}, column {word['column']}", word["shown"], "begins at", nearest)
    rings = page.value("""[...document.querySelectorAll('#key rect.over')].map((e) => { const r = e.getBoundingClientRect();
        return [r.left, r.top, r.right, r.bottom]; })""")
    for word, ring in zip(words, rings):
        for row, column in word["cells"]:
            x, y = letters[f"row {row}, column {column}"]
            check(ring[0] < x < ring[2] and ring[1] < y < ring[3], word["shown"], "leaves its ring at", row, column)
    for i in range(len(words)):
        button = f"document.querySelectorAll('.key button')[{i}]"
        page.click(button)
        check(shown(page, places) == [j == i for j in range(len(words))], words[i]["shown"], "is not shown alone")
        check(page.value(button + ".getAttribute('aria-pressed')") == "true", "its button does not say so")
    page.click(button)
    check(shown(page, places) == [True] * len(words), "the others do not come back")
    page.click("document.querySelector('input[name=key]')")
    check(not any(shown(page, places)), "the key does not go")


def judge_keyboard(page):
    page.value("document.activeElement.blur(), window.scrollTo(0, 0)")
    wanted = page.value("document.querySelectorAll('input:not([type=radio]), button, select').length") + 2  # the radios, the drawing
    reached = set()
    for _ in range(wanted + 3):
        page.key("Tab", 9)
        state = page.value("""(() => { const e = document.activeElement; const s = getComputedStyle(e);
            return e === document.body ? null : [[...document.querySelectorAll('*')].indexOf(e), s.outlineStyle, s.outlineWidth]; })()""")
        if state:
            reached.add(state[0])
            check(state[1] != "none" and state[2] != "0px", "focus cannot be seen on element", state[0])
    check(len(reached) == wanted, "the Tab key reaches", len(reached), "of", wanted)
    page.value("document.querySelector('input[name=key]').focus()")
    page.key(" ", 32, " ")
    check(any(shown(page, "#key > g")), "the space bar switches nothing")
    page.key(" ", 32, " ")
    for node in page.call("Accessibility.getFullAXTree")["nodes"]:
        role = node.get("role", {}).get("value")
        if role in ("checkbox", "radio", "button", "combobox", "ColorWell"):
            check(node.get("name", {}).get("value", "").strip(), "a", role, "has no name")


CONTRASTS = """(() => {
  const channel = (v) => { v /= 255; return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4; };
  const parts = (c) => c.match(/[0-9.]+/g).map(Number);
  const luminance = (c) => { const [r, g, b] = parts(c); return 0.2126 * channel(r) + 0.7152 * channel(g) + 0.0722 * channel(b); };
  const ground = (e) => { for (; e; e = e.parentElement) { const c = getComputedStyle(e).backgroundColor;
    if (parts(c).length < 4 || parts(c)[3] > 0) return c; } return "rgb(255, 255, 255)"; };
  const found = [];
  for (const e of document.querySelectorAll("h1, p, legend, label, button, select, .detail, .ruler text")) {
    if (!e.getClientRects().length) continue;
    const s = getComputedStyle(e);
    const a = luminance(e.closest(".ruler") ? s.fill : s.color), b = luminance(ground(e));
    found.push([(Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05), e.textContent.slice(0, 30)]);
  }
  return found; })()"""


def judge_looks(page):
    for scheme in ("light", "dark"):
        page.call("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": scheme}])
        for contrast, text in page.value(CONTRASTS):
            check(contrast >= 4.5, scheme, "contrast", contrast, text)  # WCAG 2.2, 1.4.3
        for width, height in ((1400, 900), (390, 800), (360, 640)):
            page.window(width, height)
            page.value("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
            check(page.value("document.scrollingElement.scrollWidth") <= width, "wider than", width)
            check(page.value("(() => { const t = document.querySelector('.table'); return t.scrollWidth <= t.clientWidth; })()"),
                  "the drawing does not fit into", width)
            picture(page, f"{scheme}-{width}")
    page.call("Emulation.setEmulatedMedia", features=[])
    page.window(1400, 900)


def read_ppm(data):
    width, height, _ = map(int, re.match(rb"P6\s(\d+)\s(\d+)\s(\d+)\s", data).groups())
    return width, height, data[-3 * width * height:]


def judge_print(page, expected):
    pdf = base64.b64decode(page.call("Page.printToPDF", preferCSSPageSize=True, printBackground=False)["data"])
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / "proof.pdf"
        file.write_bytes(pdf)
        said = subprocess.run(["pdfinfo", file], capture_output=True, text=True, check=True).stdout
        check(re.search(r"^Pages: +1$", said, re.M), "more than a page is printed:", re.search(r"Pages:.*", said)[0])
        size = [float(part) * MM_AN_INCH / 72 for part in re.search(r"Page size: +([0-9.]+) x ([0-9.]+)", said).groups()]
        for side, wanted in zip(size, (expected["width"], expected["height"])):
            check(abs(side - wanted - 2 * RIM) < 0.5, "the page measures", size)
        check(not subprocess.run(["pdftotext", file, "-"], capture_output=True, check=True).stdout.strip(), "text is printed besides")
        dots = 254  # ten a millimetre
        subprocess.run(["pdftoppm", "-r", str(dots), "-singlefile", file, file.with_suffix("")], check=True)
        width, height, data = read_ppm(file.with_suffix(".ppm").read_bytes())
    rows = [y for y in range(height) if min(data[3 * width * y:3 * width * (y + 1)]) < 160]
    middle = [x for x in range(width) if min(min(data[3 * (width * y + x):3 * (width * y + x) + 3]) for y in range(rows[0], rows[-1], 7)) < 160]
    for found, side, wanted in ((rows, "height", expected["height"]), (middle, "width", expected["width"])):
        check(abs(found[0] / 10 - RIM) < 0.4, "the printed", side, "begins at", found[0] / 10)
        check(abs((found[-1] + 1 - found[0]) / 10 - wanted) < 0.5, "the printed", side, "is", (found[-1] + 1 - found[0]) / 10)


address = pathlib.Path(sys.argv[1]).resolve().as_uri()
made_from = json.loads(pathlib.Path(sys.argv[2]).read_text())
with Browser() as browser:
    browser.window(1400, 900)
    browser.open(address)
    judge_text(browser, made_from)
    judge_films(browser, made_from)
    judge_sides(browser)
    judge_key(browser, made_from)
    judge_keyboard(browser)
    judge_looks(browser)
    judge_print(browser, made_from)
    check(browser.faults() == [], "the page complains:", browser.faults())
    check(set(browser.requests()) <= {address}, "the page asks for", browser.requests())
print("\n".join(faults[:20]), file=sys.stderr)
sys.exit(1 if faults else 0)
