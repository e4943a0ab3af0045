"""Orders and results, for the tests of batch."""
import json
import re
import subprocess
import sys

from program import ROOT

sys.path.insert(0, str(ROOT / "tests/oracles"))
import schema_test  # noqa: E402

HERBS = ["Thyme", "Sage", "Chervil", "Lovage", "Borage"]


def order(**members):
    return json.dumps({"words": HERBS, "grid": "9x9", **members})


def results_of(text):
    """Each line as JSON, which must be as its schema says."""
    results = [schema_test.read_strictly(line) for line in text.decode().splitlines()]
    for result in results:
        faults = schema_test.faults("result", result)
        if faults:
            raise AssertionError(f"{faults} in {result}")
    return results


def page_size(pdf):
    """As pdfinfo (Poppler) sees it, in points."""
    told = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
    return [float(size) for size in re.search(r"Page size: +([\d.]+) x ([\d.]+)", told).groups()]


def text_of(pdf):
    return subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
