"""The page to solve a puzzle on, in Chromium, as its solvers handle it: by mouse, finger and keyboard; and what it shows and tells.

    with Page(address, "beds") as page:
        page.visit()
        page.mouse_drag([(0, 0), (0, 1), (0, 2)])
        page.found()
"""
import base64
import os
import pathlib

from browser import Browser

KEYS = {"ArrowLeft": 37, "ArrowUp": 38, "ArrowRight": 39, "ArrowDown": 40, "Home": 36, "End": 35, "PageUp": 33, "PageDown": 34,
        "Escape": 27, "Enter": 13, "Tab": 9, " ": 32}


class Page(Browser):
    """The page, with what it complained of and asked for since the beginning."""

    def __init__(self, address, name):
        super().__init__()
        self.address, self.name = address, name

    def visit(self):
        self.all_events = getattr(self, "all_events", []) + self.events
        self.events = []
        self.open(self.address)

    def visit_until(self, condition):
        """A browser hands what a page stored to the next one through another process, and on a busy machine a visit can come
        before it: so the page is visited again, some times at the most."""
        for _ in range(25):
            self.visit()
            if condition():
                return True
            self.settle()
        return False

    def settle(self):
        self.value("new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")

    def picture(self, name):
        folder = os.environ.get("LODE_PICTURES")
        if folder:
            self.settle()
            taken = base64.b64decode(self.call("Page.captureScreenshot", format="png")["data"])
            (pathlib.Path(folder) / f"{self.name}-{name}.png").write_bytes(taken)

    def told(self):
        return self.value("document.getElementById('told').textContent")

    def found(self):
        """Of each word of the list whether those who see no line through it are told that it is found."""
        return self.value("[...document.querySelectorAll('#words li')].map((e) => / found$/.test(e.innerText.trim()))")

    def rings(self, look):
        """For each ring its word and the cells whose middles lie in it."""
        return [(word, {tuple(cell) for cell in inside}) for word, inside in self.value(
            "[...document.querySelectorAll('.ring." + look + "')].map((ring) => { const inside = [];"
            "const back = ring.getScreenCTM().inverse();"
            "for (const row of document.getElementById('grid').rows) for (const cell of row.cells) {"
            " const r = cell.getBoundingClientRect();"
            " if (ring.isPointInFill(new DOMPoint(r.x + r.width / 2, r.y + r.height / 2).matrixTransform(back)))"
            "  inside.push([row.rowIndex, cell.cellIndex]); }"
            "return [Number(ring.dataset.word), inside]; })")]

    def middle(self, cell):
        return self.value(f"(() => {{ const r = document.getElementById('grid').rows[{cell[0]}].cells[{cell[1]}].getBoundingClientRect();"
                          "return [r.x + r.width / 2, r.y + r.height / 2]; })()")

    def bring(self, cell):
        self.value(f"document.getElementById('grid').rows[{cell[0]}].cells[{cell[1]}].scrollIntoView({{block: 'center', inline: 'center'}})")

    def mouse(self, kind, x, y):
        self.call("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", buttons=0 if kind == "mouseReleased" else 1, clickCount=1)

    def mouse_click(self, cell):
        self.bring(cell)
        x, y = self.middle(cell)
        self.mouse("mousePressed", x, y)
        self.mouse("mouseReleased", x, y)

    def mouse_drag(self, cells):
        self.bring(cells[len(cells) // 2])
        self.mouse("mousePressed", *self.middle(cells[0]))
        for cell in cells[1:]:
            self.mouse("mouseMoved", *self.middle(cell))
        self.mouse("mouseReleased", *self.middle(cells[-1]))

    def touch(self, kind, *points):
        self.call("Input.dispatchTouchEvent", type=kind, touchPoints=[{"x": x, "y": y} for x, y in points])

    def tap(self, cell):
        self.bring(cell)
        self.touch("touchStart", self.middle(cell))
        self.touch("touchEnd")

    def finger_drag(self, cells):
        self.bring(cells[len(cells) // 2])
        self.touch("touchStart", self.middle(cells[0]))
        for cell in cells[1:]:
            self.touch("touchMove", self.middle(cell))
        self.touch("touchEnd")

    def press_key(self, name, modifiers=0):
        for kind in ("keyDown", "keyUp"):
            text = {" ": " ", "Enter": "\r"}.get(name, "") if kind == "keyDown" else ""
            self.call("Input.dispatchKeyEvent", type=kind, key=name, code=name if len(name) > 1 else "Space",
                      windowsVirtualKeyCode=KEYS[name], text=text, modifiers=modifiers)

    def at(self):
        """The cell of the grid that has focus."""
        return self.value("(() => { const c = document.activeElement.closest('#grid td');"
                          "return c && [c.parentElement.rowIndex, c.cellIndex]; })()")
