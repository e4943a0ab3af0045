#!/usr/bin/env python3
"""Blanks whose outline is an SVG file, against Chromium: documents of every path command, shape, unit, transform and way of
reuse, some by hand and some by chance (a fixed seed). Chromium says how large the outline is (SVG 1.1, getBBox, or the points
of the outline where it stands askew); the artwork that the program makes for the blank says what it has read."""
import math
import pathlib
import random
import sys
import tempfile
import unittest

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parents[1]))
from browser import Browser
from drawings import read_svg
from program import ROOT, run

SEED = 20
BY_CHANCE = 40
TOLERANCE = 0.01  # mm
ARC = 0.001  # of its size: what Chromium makes of an arc of an ellipse


def document(body, head='width="200mm" height="180mm" viewBox="0 0 200 180"'):
    return f'<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" {head}>{body}</svg>'


SQUARE = "M20 20h120v100h-120z"
BY_HAND = {
    "lines": document('<path id="e" d="M20,20 L150 30 170,140 L 30 150 Z"/>'),
    "relative lines": document('<path id="e" d="m20 20 130 10 20 110 -140 10z"/>'),
    "across and down": document('<path id="e" d="M20 20H160V130H90v20h-70z"/>'),
    "cubics": document('<path id="e" d="M30 90C30 10 170 10 170 90S30 170 30 90z"/>'),
    "relative cubics": document('<path id="e" d="m30 90c0-80 140-80 140 0s-140 80-140 0z"/>'),
    "quadratics": document('<path id="e" d="M20 90Q60 5 100 40T180 90Q100 200 20 90z"/>'),
    "relative quadratics": document('<path id="e" d="m20 90q40-85 80-50t80 50q-80 110-160 0z"/>'),
    "smooth without one before": document('<path id="e" d="M20 20L150 20S180 90 150 140T20 140z"/>'),
    "figures run together": document('<path id="e" d="M20.5.5e1L1.5e2 10.25.16e3+140L20 140.5-.25 70z"/>'),
    "arcs": document('<path id="e" d="M40 90A60 40 20 0 1 160 90A60 70 -30 0 1 40 90z"/>'),
    "arc flags run together": document('<path id="e" d="M40 90a60 40 0 01120 0a60 40 0 01-120 0z"/>'),
    "arc too small for its ends": document('<path id="e" d="M40 90A10 10 0 0 1 160 90A10 8 45 0 1 40 90z"/>'),
    "large arc": document('<path id="e" d="M80 60A50 50 0 1 0 120 60L100 90z"/>'),
    "rectangle": document('<rect id="e" x="10" y="12" width="150" height="120"/>'),
    "rectangle, one radius": document('<rect id="e" x="10" y="12" width="150" height="120" rx="30"/>'),
    "rectangle, too large a radius": document('<rect id="e" x="10" y="12" width="150" height="120" rx="90" ry="90"/>'),
    "rectangle in units": document('<rect id="e" x="1cm" y="12pt" width="5in" height="30pc"/>', 'width="200mm" height="180mm"'),
    "rectangle in parts": document('<rect id="e" x="10%" y="5%" width="70%" height="80%"/>'),
    "circle": document('<circle id="e" cx="100" cy="90" r="70"/>'),
    "circle in parts": document('<circle id="e" cx="50%" cy="50%" r="40%"/>'),
    "ellipse": document('<ellipse id="e" cx="100" cy="90" rx="80" ry="60"/>'),
    "polygon": document('<polygon id="e" points="20,20 150,40 170 150 60,160 20,100"/>'),
    "in inches": document(f'<path id="e" d="{SQUARE}"/>', 'width="8in" height="7.2in" viewBox="0 0 200 180"'),
    "in centimetres": document(f'<path id="e" d="{SQUARE}"/>', 'width="20cm" height="18cm" viewBox="0 0 200 180"'),
    "in points": document(f'<path id="e" d="{SQUARE}"/>', 'width="600pt" height="540pt" viewBox="0 0 200 180"'),
    "in pixels": document(f'<path id="e" d="{SQUARE}" transform="scale(3)"/>', 'width="700" height="700px"'),
    "squeezed": document(f'<path id="e" d="{SQUARE}"/>', 'width="200mm" height="90mm" viewBox="0 0 200 180" preserveAspectRatio="none"'),
    "sliced": document(f'<path id="e" d="{SQUARE}"/>',
                       'width="200mm" height="150mm" viewBox="0 0 200 180" preserveAspectRatio="xMinYMax slice"'),
    "view box elsewhere": document(f'<path id="e" d="{SQUARE}"/>', 'width="200mm" height="180mm" viewBox="-30 -40 250 225"'),
    "rotated": document('<path id="e" d="M40 40h90v60h-90z" transform="rotate(30 85 70)"/>'),
    "rotated by a quarter": document(f'<path id="e" d="{SQUARE}" transform="translate(180) rotate(90)"/>'),
    "skewed": document('<path id="e" d="M40 30h80c20 0 20 60 0 60h-80z" transform="skewX(20) skewY(-5)"/>'),
    "by a matrix": document('<ellipse id="e" cx="80" cy="60" rx="50" ry="30" transform="matrix(1.1 .2 -.3 1.2 30 10)"/>'),
    "transforms in transforms": document('<g transform="translate(20,5) scale(.5)"><g transform="rotate(-12)">'
                                         '<path id="e" transform="scale(2 1.5)" d="M20 60h120v80h-60q-60 0 -60 -80z"/></g></g>'),
    "used": document(f'<defs><path id="a" d="{SQUARE}"/></defs><use id="e" xlink:href="#a" x="10" y="5" transform="scale(1.1)"/>'),
    "used twice over": document('<defs><g id="b"><use href="#a" transform="scale(1.2 .9)"/></g>'
                                f'<path id="a" d="{SQUARE}"/></defs><use id="e" href="#b"/>'),
    "a symbol": document('<symbol id="a" viewBox="0 0 10 10"><rect width="10" height="8"/></symbol>'
                         '<use id="e" href="#a" width="120" height="150"/>'),
    "a document in a document": document('<svg x="10" y="10" width="150" height="120" viewBox="0 0 50 60">'
                                         '<path id="e" d="M1 1h45v50q-30 8 -45 0z"/></svg>'),
    "among others": document('<rect width="199" height="179" fill="none"/><path d="M0 0h190v170h-190z" display="none"/>'
                             f'<path id="e" d="{SQUARE}"/>'
                             '<circle cx="30" cy="150" r="20"/><defs><rect width="180" height="170"/></defs>'),
    "told by a style": document('<style>.away { display: none } rect { fill: none }</style><path class="away" d="M0 0h190v170h-190z"/>'
                                f'<rect width="199" height="179"/><path id="e" style="fill:#a1b2c3" d="{SQUARE}"/>'),
    "with holes": document('<path id="e" fill-rule="evenodd" d="M20 20h150v130h-150zM30 30h10v10h-10z"/>'),
}

MEASURE = """(() => [...document.querySelectorAll("body > svg")].map((svg) => {
  const e = svg.querySelector('[id="e"]'), m = e.getScreenCTM(), b = e.getBBox();
  const small = 1e-9 * (Math.abs(m.a) + Math.abs(m.b));
  if (Math.abs(m.b) < small && Math.abs(m.c) < small) return [Math.abs(m.a) * b.width, Math.abs(m.d) * b.height];
  if (Math.abs(m.a) < small && Math.abs(m.d) < small) return [Math.abs(m.c) * b.height, Math.abs(m.b) * b.width];
  // Askew: its farthest points, found among many and then closed in upon between their neighbours.
  const all = e.getTotalLength(), count = 800;
  const point = (t) => {
    const p = e.getPointAtLength(Math.min(Math.max(t, 0), all));
    return [m.a * p.x + m.c * p.y, m.b * p.x + m.d * p.y];
  };
  const points = Array.from({ length: count + 1 }, (_, i) => point(all * i / count));
  const value = (t, x, y) => { const p = point(t); return x * p[0] + y * p[1]; };
  const farthest = (x, y) => {
    let best = 0, top = -Infinity;
    points.forEach((p, i) => { const v = x * p[0] + y * p[1]; if (v > top) { top = v; best = i; } });
    let low = all * (best - 1) / count, high = all * (best + 1) / count;
    for (let i = 0; i < 40; i++) {
      const a = low + (high - low) / 3, b = high - (high - low) / 3;
      if (value(a, x, y) < value(b, x, y)) low = a; else high = b;
      top = Math.max(top, value(a, x, y), value(b, x, y));
    }
    return top;
  };
  return [farthest(1, 0) + farthest(-1, 0), farthest(0, 1) + farthest(0, -1)];
}))()"""


def by_chance(chance):
    """An outline about a middle, of commands as they come, that crosses itself hardly ever."""
    figure = lambda x: repr(round(x, chance.choice((1, 3, 5))))
    count = chance.randint(6, 12)
    middle = chance.uniform(90, 110), chance.uniform(80, 100)
    corners = []
    for i in range(count):
        angle, far = 2 * math.pi * (i + chance.uniform(0, 0.5)) / count, chance.uniform(55, 75)
        corners.append((round(middle[0] + far * math.cos(angle), 3), round(middle[1] + far * math.sin(angle), 3)))
    data = f"M{corners[0][0]} {corners[0][1]}"
    pen, arcs = corners[0], False
    for corner in corners[1:]:
        command = chance.choice("LlCcQqAaSs")
        from_ = pen if command.islower() else (0, 0)
        point = lambda p: f"{round(p[0] - from_[0], 3)},{round(p[1] - from_[1], 3)}"
        between = lambda share: tuple(a + share * (b - a) + chance.uniform(-5, 5) for a, b in zip(pen, corner))
        kind = command.upper()
        if kind == "A":
            reach = math.dist(pen, corner)
            radii = [figure(reach * chance.uniform(0.7, 3)) for _ in "xy"]
            data += f"{command}{' '.join(radii)} {figure(chance.uniform(-200, 200))} 0 1 {point(corner)}"
            arcs = True
        else:
            controls = {"L": (), "C": (0.3, 0.7), "Q": (0.5,), "S": (0.7,)}[kind]
            data += command + " ".join([*(point(between(share)) for share in controls), point(corner)])
        pen = corner
    head = chance.choice((
        'width="200mm" height="180mm" viewBox="0 0 200 180"', 'width="9in" height="7in" viewBox="-5 3 220 190"',
        'width="640" height="600px" viewBox="0 0 200 180" preserveAspectRatio="xMaxYMin meet"',
        'width="30pc" height="500pt" viewBox="0 0 200 200" preserveAspectRatio="none"', 'width="18cm" height="20cm" viewBox="0 0 210 180"'))
    transform = chance.choice(("", "scale(.9 -1.1)", "translate(3,-4)", f"rotate({figure(chance.uniform(0, 360))})",
                               f"skewX({figure(chance.uniform(-20, 20))})",
                               f"translate(5) rotate({figure(chance.uniform(0, 90))} 100,90) scale({figure(chance.uniform(0.8, 1.2))})"))
    path = f'<path id="e" transform="{transform}" d="{data}{chance.choice("zZ")}"/>'
    return document(f'<g transform="translate(4) scale(1.05)">{path}</g>', head), arcs


class Bounds(unittest.TestCase):
    def test_of_outlines_are_those_of_a_browser(self):
        chance = random.Random(SEED)
        documents = {name: (text, "arc" in name) for name, text in BY_HAND.items()}
        documents.update((f"by chance, {i}", by_chance(chance)) for i in range(BY_CHANCE))
        with Browser() as browser, tempfile.TemporaryDirectory() as folder:
            # Ids of one document must not be taken for another's: each is measured on a page of its own.
            theirs = {}
            frame = browser.call("Page.getFrameTree")["frameTree"]["frame"]["id"]
            for name, (text, _) in documents.items():
                browser.call("Page.setDocumentContent", frameId=frame, html="<!doctype html><body>" + text)
                theirs[name] = [side * 25.4 / 96 for side in browser.value(MEASURE)[0]]
            puzzle = pathlib.Path(folder, "puzzle.json")
            puzzle.write_bytes(run("make", ROOT / "data/samples/herb-bed.txt", "--grid", "10x10", "--json").stdout)
            compared, crossing, worst, worst_arc = 0, 0, 0, 0
            for name, (text, arcs) in documents.items():
                with self.subTest(name):
                    blank = pathlib.Path(folder, "blank.svg")
                    blank.write_text(text)
                    result = run("cut", puzzle, "--blank", blank, "--surface", "first", "--band", "none")
                    said = result.stderr.decode()
                    if name not in BY_HAND and "crosses itself" in said:
                        crossing += 1
                        continue
                    self.assertIn(result.returncode, (0, 1), f"{name}: {said}\n{text}")
                    drawn = pathlib.Path(folder, "drawn.svg")
                    drawn.write_bytes(result.stdout)
                    drawing = read_svg(drawn)
                    compared += 1
                    for ours, side in zip((drawing.width, drawing.height), theirs[name]):
                        far = abs(ours - side)
                        if arcs:
                            worst_arc = max(worst_arc, far / side)
                        else:
                            worst = max(worst, far)
                        self.assertLessEqual(far, TOLERANCE + (ARC * side if arcs else 0),
                                             f"{name}: Chromium measures {theirs[name]} mm, the blank is "
                                             f"{(drawing.width, drawing.height)}\n{text}")
            print(f"{compared} outlines compared ({crossing} cross themselves): {worst:.5f} mm apart at the most, with arcs "
                  f"{100 * worst_arc:.4f} percent", file=sys.stderr)
            self.assertGreaterEqual(compared, len(BY_HAND) + BY_CHANCE // 2, "too few outlines could be compared")


if __name__ == "__main__":
    unittest.main()
