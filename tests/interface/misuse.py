#!/usr/bin/env python3
"""misuse.py CXX INCLUDE SOURCE: the compiler refuses every marked line of SOURCE, and no other line."""
import re
import subprocess
import sys


def main():
    compiler, include, source = sys.argv[1:]
    with open(source, encoding="utf-8") as file:
        marked = {number for number, line in enumerate(file, 1) if line.rstrip().endswith("// dropped")}
    all_of_them = ["-ferror-limit=0"] if "clang" in compiler else []
    run = subprocess.run([compiler, "-std=c++20", "-fsyntax-only", *all_of_them, "-Werror=unused-result", f"-I{include}", source],
                         capture_output=True, text=True)
    complaints = re.findall(rf"^{re.escape(source)}:(\d+):\d+: error: (.*)$", run.stderr, flags=re.M)
    others = [f"line {number}: {text}" for number, text in complaints if "unused-result" not in text]
    refused = {int(number) for number, _ in complaints}
    if others or refused != marked or not run.returncode:
        sys.exit(f"not refused: lines {sorted(marked - refused)}; refused: lines {sorted(refused - marked)}; {others}")
    print(f"{len(marked)} dropped results, all refused")


if __name__ == "__main__":
    main()
