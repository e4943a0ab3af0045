"""The program as tests call it. LETTERLODE names it; nothing here imports or links the project."""
import os
import pathlib
import subprocess
import tempfile
import unittest

PROGRAM = os.environ["LETTERLODE"]
ROOT = pathlib.Path(__file__).resolve().parent.parent
SAMPLE = ROOT / "data/samples/tool-shed.txt"
PANEL = ["--blank", "8x10in", "--surface", "second", "--heading", "Wrenbarrow Garden"]


def run(*arguments, stdin=b"", cwd=None, **more):
    return subprocess.run([PROGRAM, *map(str, arguments)], input=stdin, capture_output=True, cwd=cwd, **more)


class InFolder(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = pathlib.Path(folder.name)

    def write(self, name, text):
        path = self.folder / name
        path.write_bytes(text if isinstance(text, bytes) else text.encode())
        return path

    def names(self):
        return sorted(path.name for path in self.folder.iterdir())

    def refused(self, code, *arguments, says=(), stdin=b""):
        """Runs the program, expects the exit code and that standard error says all of these."""
        result = run(*arguments, stdin=stdin, cwd=self.folder)
        said = result.stderr.decode("utf-8", "replace")
        self.assertEqual(result.returncode, code, said)
        self.assertTrue(said.startswith("letterlode: "), said)
        for part in says:
            self.assertIn(part, said)
        self.assertGreaterEqual(len(said.splitlines()), 2, "no way out is offered: " + said)
        return result


STEPS = {"right": (0, 1), "down": (1, 0), "down-right": (1, 1), "up-right": (-1, 1),
         "left": (0, -1), "up": (-1, 0), "up-left": (-1, -1), "down-left": (1, -1)}


def cells_of(word):
    """The cells of a placed word in a puzzle's JSON, as (row, column)."""
    down, across = STEPS[word["placed"]["direction"]]
    return [(word["placed"]["row"] + at * down, word["placed"]["column"] + at * across) for at in range(len(word["letters"]))]
