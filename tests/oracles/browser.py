"""Chromium without a window, spoken to over a pipe by its own protocol: no port, no package besides.

    with Browser() as browser:
        browser.open(pathlib.Path("page.html").absolute().as_uri())
        browser.value("document.title")
"""
import json
import os
import shutil
import subprocess
import tempfile


class Browser:
    def __enter__(self):
        self.folder = tempfile.mkdtemp(prefix="lode-browser-")
        ours_out, theirs_in = os.pipe()[::-1]
        theirs_out, ours_in = os.pipe()[::-1]
        command = ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--disable-background-networking",
                   "--hide-scrollbars", "--remote-debugging-pipe", "--user-data-dir=" + self.folder, "about:blank"]

        # The protocol reads from 3 and writes to 4, wherever the pipes happen to be.
        def place():
            read, write = os.dup(theirs_in), os.dup(theirs_out)
            os.dup2(read, 3)
            os.dup2(write, 4)

        self.process = subprocess.Popen(command, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                                        preexec_fn=place, close_fds=False)
        os.close(theirs_in)
        os.close(theirs_out)
        self.to = os.fdopen(ours_out, "wb", buffering=0)
        self.of = os.fdopen(ours_in, "rb", buffering=0)
        self.rest = b""
        self.number = 0
        self.events = []
        self.session = None
        target = self.call("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.call("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Page", "Runtime", "Log", "Network", "DOM", "Accessibility"):
            self.call(domain + ".enable")
        return self

    def __exit__(self, *_):
        self.session = None
        try:
            self.call("Browser.close")
        except EOFError:
            pass
        self.process.wait()
        self.to.close()
        self.of.close()
        shutil.rmtree(self.folder, ignore_errors=True)

    def receive(self):
        while b"\0" not in self.rest:
            more = self.of.read(65536)
            if not more:
                raise EOFError("Chromium has ended")
            self.rest += more
        message, self.rest = self.rest.split(b"\0", 1)
        return json.loads(message)

    def call(self, method, **parameters):
        self.number += 1
        message = {"id": self.number, "method": method, "params": parameters}
        if self.session:
            message["sessionId"] = self.session
        self.to.write(json.dumps(message).encode() + b"\0")
        while True:
            answer = self.receive()
            if answer.get("id") == self.number:
                if "error" in answer:
                    raise RuntimeError(f"{method}: {answer['error']['message']}")
                return answer["result"]
            if "method" in answer:
                self.events.append(answer)

    def open(self, address):
        self.call("Page.navigate", url=address)
        while not any(event["method"] == "Page.loadEventFired" for event in self.events):
            answer = self.receive()
            if "method" in answer:
                self.events.append(answer)

    def value(self, expression):
        """What an expression gives in the page, as JSON holds it."""
        answer = self.call("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise RuntimeError(answer["exceptionDetails"]["exception"].get("description", expression))
        return answer["result"].get("value")

    def click(self, element):
        """Presses the mouse on the middle of what an expression gives."""
        x, y = self.value(f"(() => {{ const one = {element}; one.scrollIntoView({{block: 'center'}});"
                          "const r = one.getBoundingClientRect(); return [r.x + r.width / 2, r.y + r.height / 2]; })()")
        for kind in ("mousePressed", "mouseReleased"):
            self.call("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left", clickCount=1)

    def key(self, name, code, text=""):
        self.call("Input.dispatchKeyEvent", type="keyDown", key=name, code=name if len(name) > 1 else "Space",
                  windowsVirtualKeyCode=code, text=text)
        self.call("Input.dispatchKeyEvent", type="keyUp", key=name, code=name if len(name) > 1 else "Space",
                  windowsVirtualKeyCode=code)

    def window(self, width, height):
        self.call("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)

    def faults(self):
        """What the page complained of: exceptions, errors and warnings of the console, refusals of its policy."""
        found = []
        for event in self.events:
            told = event["params"]
            if event["method"] == "Runtime.exceptionThrown":
                found.append(told["exceptionDetails"]["text"])
            elif event["method"] == "Log.entryAdded":
                found.append(told["entry"]["text"])
            elif event["method"] == "Runtime.consoleAPICalled":
                found.append("console: " + told["type"])
        return found

    def requests(self):
        return [event["params"]["request"]["url"] for event in self.events if event["method"] == "Network.requestWillBeSent"]
