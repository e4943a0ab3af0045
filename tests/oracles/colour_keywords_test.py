#!/usr/bin/env python3
"""The keywords of colours mean what a browser makes of them: headless Chromium's computed values judge the table of
lib/score/colour_keywords.hpp (CSS Color Module Level 4, section 6.1)."""
import html
import json
import pathlib
import re
import subprocess
import sys
import tempfile

TABLE = pathlib.Path(__file__).parents[2] / "lib/score/colour_keywords.hpp"
keywords = re.findall(r'\{"([a-z]+)", 0x([0-9a-f]{6})\}', TABLE.read_text())
assert len(keywords) == 148, len(keywords)
assert [name for name, _ in keywords] == sorted(name for name, _ in keywords)

PAGE = """<!doctype html><pre id="found"></pre><script>
const found = {};
for (const name of NAMES) {
  const mark = document.createElement("i");
  mark.style.color = name;
  document.body.append(mark);
  found[name] = mark.style.color ? getComputedStyle(mark).color : "unknown";
}
document.getElementById("found").textContent = JSON.stringify(found);
</script>"""

with tempfile.TemporaryDirectory() as folder:
    page = pathlib.Path(folder, "page.html")
    page.write_text(PAGE.replace("NAMES", json.dumps([name for name, _ in keywords])))
    dom = subprocess.run(["chromium", "--headless", "--no-sandbox", "--disable-gpu", f"--user-data-dir={folder}/profile",
                          "--dump-dom", page.as_uri()], check=True, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
                         text=True).stdout
found = json.loads(html.unescape(re.search(r'<pre id="found">(.*?)</pre>', dom).group(1)))

different = 0
for name, digits in keywords:
    rgb = ", ".join(str(int(digits[at:at + 2], 16)) for at in (0, 2, 4))
    if found[name] != f"rgb({rgb})":
        print(f"{name}: the table has {digits}, the browser {found[name]}")
        different += 1
sys.exit(different != 0)
