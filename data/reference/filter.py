#!/usr/bin/env python3
"""filter.py HEADER: prints a public header as Doxygen is to read it, line for line.

The headers are written for those who read them as they are. This adds what Doxygen asks for and such a reader does not miss:
which group a header belongs to (groups.dox has them in order), and what the form of a declaration says by itself. Of the C
headers, whose comments are plain, it makes each comment one that documents what follows, and each section a group.
"""
import pathlib
import re
import sys

GROUPS = {
    "outcome": "outcomes", "files": "outcomes", "version": "outcomes", "export": "outcomes",
    "text": "text", "grid": "grid", "find": "find", "puzzle": "puzzle", "score": "score",
    "art": "art", "blank": "art", "colour": "art", "path": "art", "drawing": "art",
    "cut": "cut", "plan": "cut", "print": "print", "paper": "print",
    "letterlode": "c_core", "letterlode_art": "c_art",
}

# A declaration that has no comment of its own, and what its form says.
FORMS = [
    (r"friend (constexpr )?bool operator==\(.*= default;", "Equal where all members are."),
    (r"(\w+)\(\1&&\) noexcept;", "Moves; the other may then only be assigned to or destroyed."),
    (r"(\w+)& operator=\(\1&&\) noexcept;", "Moves; the other may then only be assigned to or destroyed."),
    (r"\[\[nodiscard\]\] LODE_API std::string_view name\(\w+ \w+\);", "The enumerator as a text: lower case, with hyphens."),
    (r"\[\[nodiscard\]\] LODE_API std::optional<\w+> \w+_named\(std::string_view name\);",
     "The enumerator that has this name, or nothing."),
]


def with_forms(text):
    lines = text.split("\n")
    for at, line in enumerate(lines):
        if lines[at - 1].lstrip().startswith("///") or "///<" in line:
            continue
        for form, said in FORMS:
            if re.fullmatch(form, line.strip()):
                lines[at] = f"/** {said} */ {line}"
    return "\n".join(lines)


def cpp(text, stem):
    """The opening comment is of the group and of the file; the group has all that is in the namespace."""
    group = GROUPS[stem]
    opening = re.match(r"#pragma once\n((?://[^\n]*\n)+)", text)
    said = re.sub(r"^//", "", opening[1].removesuffix("\n"), flags=re.M)
    body = with_forms(text[opening.end():])
    body = body.replace("namespace lode {", f"namespace lode {{ /** \\addtogroup {group} */ /** \\{{ */", 1)
    body = body.replace("}  // namespace lode", "/** \\} */ }")
    return f"/** \\file */ /** \\addtogroup {group}\n{said} */\n{body}"


def c(text, stem):
    """Each section is a group within the header's own; a comment that no declaration follows describes its section. The
    comments of functions end with [owner | threads | since]."""
    def terms(match):
        owner, threads, since = (" ".join(term.split()) for term in match.groups())
        owner = "" if owner.endswith("to own") else f"Result: {owner}. "
        return f"\n\\par\n{owner}Threads: {threads}. Since {since.removeprefix('since ')}. */"

    def said_in(comment):
        return re.sub(r"^/\*+|\s*\*/\s*$", "", comment)

    group, sections = GROUPS[stem], 0
    text = re.sub(r"\s*\[([^][|]+)\|([^][|]+)\|([^][|]+)\]\s*\*/", terms, text)
    parts = re.split(r"^(/\*.*?\*/\n)", text, flags=re.S | re.M)
    for at in range(1, len(parts), 2):
        section = re.match(r"/\* -{4} (.+?) -+ \*/", parts[at])
        if at == 1:
            said = re.sub(r"^ \* (\d\d\. )", r" *  \1", said_in(parts[at]).replace("@file", ""), flags=re.M)
            parts[at] = f"/** \\file */ /** \\addtogroup {group}\n{said} */ /** \\{{ */\n"
        elif section:
            sections += 1
            said = ""
            if not parts[at + 1].strip() and at + 2 < len(parts) and parts[at + 3].startswith("\n"):
                said, parts[at + 2] = said_in(parts[at + 2]), ""
            parts[at] = "/** \\} */ " if sections > 1 else ""
            parts[at] += f"/** \\defgroup {group}_{sections} {section[1]}\n\\ingroup {group}\n\n{said} */ /** \\{{ */\n"
    return "".join(parts) + "/** \\} */\n" * (2 if sections else 1)


def main():
    path = pathlib.Path(sys.argv[1])
    text = path.read_text(encoding="utf-8")
    text = text.replace("'.'", r"'\.'")  # a dot that ends no sentence
    sys.stdout.write(cpp(text, path.stem) if path.suffix == ".hpp" else c(text, path.stem))


if __name__ == "__main__":
    main()
