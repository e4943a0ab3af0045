#!/usr/bin/env python3
"""The same recipe gives the same bytes in every environment: the program is run under the locales, languages and time zones
that a user may have set, for words of a language that ICU has data of and of some that it has none of (CLDR 42 has no
letters of Latin, Coptic or Sumerian)."""
import os
import subprocess
import sys
import tempfile

PROGRAM = os.environ["LETTERLODE"]
ENVIRONMENTS = [
    {"LC_ALL": "C"},
    {"LC_ALL": "ru_RU.UTF-8"},
    {"LC_ALL": "el_GR.UTF-8", "LANGUAGE": "el"},
    {"LANG": "tr_TR.UTF-8", "TZ": "Asia/Kathmandu"},
    {"LC_MESSAGES": "ar_EG.UTF-8", "LC_NUMERIC": "de_DE.UTF-8"},
]
WORDS = "rosa\nlilium\nquercus\nhedera\nmalus\n"


def made(locale: str, environment: dict) -> bytes:
    with tempfile.NamedTemporaryFile("w", suffix=".txt", encoding="utf-8") as words:
        words.write(WORDS)
        words.flush()
        return subprocess.run([PROGRAM, "make", words.name, "--locale", locale, "--json"], env=environment, check=True,
                              stdout=subprocess.PIPE).stdout.replace(words.name.encode(), b"WORDS")


different = 0
for locale in ("root", "en", "la", "cop", "sux"):
    first, *others = (made(locale, environment) for environment in ENVIRONMENTS)
    assert b'"letterlode-puzzle"' in first
    for environment, other in zip(ENVIRONMENTS[1:], others):
        if other != first:
            print(f"--locale {locale}: another puzzle under {environment}")
            different += 1
sys.exit(different != 0)
