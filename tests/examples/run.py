#!/usr/bin/env python3
"""run.py PROGRAM SOURCE: runs an example in an empty folder, and holds what it prints against its opening comment.

The comment says what is printed after "Prints:"; it may break a long line.
"""
import pathlib
import re
import subprocess
import sys
import tempfile


def said(source):
    text = pathlib.Path(source).read_text(encoding="utf-8")
    comment = re.match(r"/\*.*?\*/|(?://[^\n]*\n)+", text, flags=re.S)[0]
    lines = [re.sub(r"^(//| \*)", "", line).rstrip() for line in comment.removesuffix("*/").split("\n")]
    if " Prints:" not in lines:
        sys.exit(f"{source}: its opening comment does not say what it prints")
    return "\n".join(lines[lines.index(" Prints:") + 1:])


def main():
    program, source = sys.argv[1:]
    with tempfile.TemporaryDirectory() as folder:
        run = subprocess.run([program], cwd=folder, capture_output=True, text=True, encoding="utf-8")
    if run.returncode or run.stderr or run.stdout.split() != said(source).split():
        sys.exit(f"{source} ended with {run.returncode} and {run.stderr!r}, and printed\n{run.stdout}\n"
                 f"but says that it prints\n{said(source)}")


if __name__ == "__main__":
    main()
