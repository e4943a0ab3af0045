#!/usr/bin/env python3
"""The binary interface, and what of it changed since the last release.

  abi.py describe FOLDER --version V --cc CC --cxx CXX --include INCLUDE LIBRARY...   writes the description
  abi.py check FOLDER    (the same)                                                  compares with it

A description has three parts, which together are what a program is compiled against:
  c.abi        the C functions, their parameters and all enumerators, as abidw writes them
  symbols.txt  the C++ symbols that the libraries export, and what the functions return, which no symbol says
  layout.txt   the public C++ types: sizes, members and where they lie, enumerators, virtual functions

The types come from the headers. Each C function is given a body here that does nothing, and each enumeration a function that
takes it; each C++ type a function that takes a pointer to it. What the headers declare and what the libraries export is one and
the same: the compiler sees to it, for lib/c includes the headers, and so does tests/consumers/exports.sh.
"""
import argparse
import pathlib
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree

ABIDW = ["abidw", "--no-corpus-path", "--no-comp-dir-path", "--no-show-locs", "--no-architecture", "--no-elf-needed",
         "--no-parameter-names"]
EXPORTED = '__attribute__((visibility("default")))'


def run(command, **more):
    ended = subprocess.run([str(part) for part in command], capture_output=True, text=True, **more)
    if ended.returncode:
        sys.exit(f"{' '.join(str(part) for part in command)} failed:\n{ended.stderr}")
    return ended.stdout


def described(compiler, flags, source, suffix):
    """What abidw says of a source file, compiled with its types."""
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder) / f"interface{suffix}"
        file.write_text(source, encoding="utf-8")
        library = file.with_suffix(".so")
        run([compiler, *flags, "-g", "-gdwarf-4", "-fPIC", "-shared", "-fvisibility=hidden", "-w", file.name, "-o", library], cwd=folder)
        return run([*ABIDW, library])


def describe_c(cc, include):
    """The C interface of all headers in the folder."""
    headers = sorted((include / "letterlode").glob("*.h"))
    wanted = "".join(f"#include <letterlode/{header.name}>\n" for header in headers)
    text = run([cc, "-std=c99", "-E", "-P", f"-I{include}", "-x", "c", "-"], input=wanted)
    exported = re.escape(EXPORTED)
    text, functions = re.subn(rf"({exported} [^;{{}}]+\));", r"\1 { __builtin_trap(); }", text)
    if not functions or exported in re.sub(rf"{exported} [^;{{}}]+\) \{{", "", text):
        sys.exit("not every C function was understood")

    # The codes are int32_t where they are passed, and so no function leads to their enumerations.
    takers = []

    def named(match):
        takers.append(f"enumerators_from_{match[1]}")
        return f"enum {takers[-1]} {{ {match[1]}"
    text = re.sub(r"\benum\s*\{\s*(\w+)", named, text)
    text += "".join(f"{EXPORTED} void has_{taker}(enum {taker} one) {{}}\n" for taker in takers)
    return described(cc, ["-std=c99"], text, ".c")


def describe_symbols(libraries, include):
    """The C++ symbols, but those that every user makes for himself from the headers (weak ones); and the types of results."""
    lines = set()
    for library in libraries:
        for line in run(["nm", "-D", "--defined-only", "--demangle", "--no-weak", library]).splitlines():
            kind, symbol = line.split(" ", 2)[1:]
            if kind in "TDRB" and "lode::" in symbol:
                lines.add(symbol)
    if not lines:
        sys.exit("no library exports a C++ symbol")
    for header in (include / "letterlode").glob("*.hpp"):
        for kind, name in re.findall(r"\[\[nodiscard\]\] (?:static |virtual |constexpr |LODE_API )*(?!explicit)([^=;({]+?)\s+(\w+)\(",
                                     header.read_text(encoding="utf-8")):
            lines.add(f"{name} returns {kind}")
    return "".join(f"{line}\n" for line in sorted(lines))


def plainly(name):
    """A name without what the standard library's templates add by default."""
    name = name.replace("std::__cxx11::basic_string<char, std::char_traits<char>, std::allocator<char> >", "std::string")
    before = ""
    while before != name:
        before, name = name, re.sub(r", std::(?:allocator|default_delete|hash|equal_to)<[^<>]*(?:<[^<>]*>)?[^<>]*>(?= ?[,>])", "", name)
    return name.replace(" >", ">")


class Types:
    """abidw's types by their identifiers, and their names in C++."""

    def __init__(self, root):
        self.by_id = {node.get("id"): node for node in root.iter() if node.get("id")}
        self.scope = {}
        self.note_scopes(root, "")

    def note_scopes(self, node, scope):
        for child in node:
            inner = scope
            if child.tag in ("namespace-decl", "class-decl"):
                inner = f"{scope}{child.get('name')}::"
            if child.get("id"):
                self.scope.setdefault(child.get("id"), scope)
            self.note_scopes(child, inner)

    def name(self, identifier):
        node = self.by_id[identifier]
        below = lambda: self.name(node.get("type-id"))
        if node.tag == "pointer-type-def":
            return below() + "*"
        if node.tag == "reference-type-def":
            return below() + ("&" if node.get("kind") == "lvalue" else "&&")
        if node.tag == "qualified-type-def":
            return "const " + below()
        if node.tag == "array-type-def":
            return f"{below()}[{node.get('dimensions')}]"
        return self.scope.get(identifier, "") + plainly(node.get("name") or node.tag)


def describe_layout(cxx, include):
    """The types that the C++ headers define."""
    headers = sorted((include / "letterlode").glob("*.hpp"))
    defined = sorted({name for header in headers for name in re.findall(
        r"^(?:struct|class|enum class) (?:LODE_API )?(\w+)[^;{]*\{", header.read_text(encoding="utf-8"), flags=re.M)})
    source = "".join(f"#include <letterlode/{header.name}>\n" for header in headers) + "namespace lode {\n"
    source += "".join(f"{EXPORTED} void has({name}*) {{}}\n" for name in defined)
    source += f"{EXPORTED} void has(Outcome<int>*) {{}}\n}}\n" if (include / "letterlode/outcome.hpp").exists() else "}\n"
    root = xml.etree.ElementTree.fromstring(
        described(cxx, ["-std=c++20", "-femit-class-debug-always", f"-I{include}"], source, ".cpp"))
    types, told = Types(root), {}
    for node in root.iter():
        scope = types.scope.get(node.get("id"), "")
        if not scope.startswith("lode::") or node.tag not in ("class-decl", "enum-decl") or node.get("is-declaration-only"):
            continue
        name = f"{scope}{node.get('name')}"
        sized = node if node.tag == "class-decl" else types.by_id[node.find("underlying-type").get("type-id")]
        lines = [f"{name}: {sized.get('size-in-bits')} bits"]
        places = [(int(base.get("layout-offset-in-bits")), f"base {types.name(base.get('type-id'))}")
                  for base in node.findall("base-class")]
        for member in node.findall("data-member"):
            if not member.get("static"):
                variable = member.find("var-decl")
                places.append((int(member.get("layout-offset-in-bits")),
                               f"{variable.get('name')} is {types.name(variable.get('type-id'))}"))
        lines += [f"{name} at {place}: {what}" for place, what in sorted(places)]
        functions = [(int(member.get("vtable-offset")), member.find("function-decl").get("name"))
                     for member in node.findall("member-function") if member.get("vtable-offset")]
        lines += [f"{name} virtual {place}: {what}" for place, what in sorted(set(functions))]
        lines += [f"{name}::{value.get('name')} = {value.get('value')}" for value in node.findall("enumerator")]
        told[name] = "".join(f"{line}\n" for line in lines)
    missing = [name for name in defined if f"lode::{name}" not in told]
    if missing:
        sys.exit(f"nothing is known of {missing}")
    return "".join(told[name] for name in sorted(told))


def c_changes(old, new):
    """What programs that were compiled against the old description would miss, and what is new to them."""
    with tempfile.TemporaryDirectory() as folder:
        files = [pathlib.Path(folder) / name for name in ("released.abi", "present.abi")]
        for file, text in zip(files, (old, new)):
            file.write_text(text, encoding="utf-8")
        broken = subprocess.run(["abidiff", "--no-added-syms", *files], capture_output=True, text=True)
        added = subprocess.run(["abidiff", "--harmless", *files], capture_output=True, text=True).stdout
    if broken.returncode & 3:
        sys.exit(f"abidiff failed: {broken.stdout}{broken.stderr}")
    return broken.stdout if broken.returncode else "", re.findall(r"\[A\] '(.*)'|enumerator insertions?:\n\s*'(.*)' value", added)


def text_changes(old, new):
    """Lines that are gone or changed, lines that come, and of these the ones that move what was there: new members."""
    old, new = set(old.splitlines()), set(new.splitlines())
    known = {line.rpartition(": ")[0] for line in old if line.endswith(" bits")}
    come = sorted(new - old)
    moving = [line for line in come if re.split(" (?:at|virtual) ", line)[0] in known and re.search(r" (?:at|virtual) -?\d+: ", line)]
    return sorted(old - new), come, moving


def check(folder, version, parts):
    """Returns whether the interface may be as it is in this version; prints what changed."""
    released = (folder / "version.txt").read_text().strip()
    numbers = lambda text: [int(number) for number in text.split(".")]
    (old_major, old_minor, *_), (major, minor, *_) = numbers(released), numbers(version)
    is_new_abi = major > old_major or (major == 0 and minor > old_minor)

    right = True
    broken, added = c_changes((folder / "c.abi").read_text(), parts["c.abi"])
    if broken:
        right = major > old_major
        print(f"The C interface of {released} is broken, which only a new major version may do:\n{broken}")
    for function, code in added:
        print(f"added to C since {released}: {function or code}")
    for part, what in (("symbols.txt", "C++ symbol"), ("layout.txt", "C++ type")):
        gone, come, moving = text_changes((folder / part).read_text(), parts[part])
        if (gone or moving) and not is_new_abi:
            right = False
            print(f"A {what} of {released} is gone or changed, which only a new minor version may do (a new major one from 1 on):")
        for sign, lines in (("-", gone), ("+", come)):
            for line in lines:
                print(f"  {sign} {line}")
    return right


def main():
    arguments = argparse.ArgumentParser()
    arguments.add_argument("what", choices=("describe", "check"))
    arguments.add_argument("folder", type=pathlib.Path)
    for name in ("version", "cc", "cxx"):
        arguments.add_argument(f"--{name}", required=True)
    arguments.add_argument("--include", type=lambda path: pathlib.Path(path).resolve(), required=True)
    arguments.add_argument("libraries", nargs="+")
    asked = arguments.parse_args()
    parts = {"c.abi": describe_c(asked.cc, asked.include), "symbols.txt": describe_symbols(asked.libraries, asked.include),
             "layout.txt": describe_layout(asked.cxx, asked.include)}
    if asked.what == "check":
        if not check(asked.folder, asked.version, parts):
            sys.exit("DEVELOPERS.md says what may change when, and how a release renews the description")
        print(f"{asked.version} may follow {(asked.folder / 'version.txt').read_text().strip()}")
        return
    asked.folder.mkdir(parents=True, exist_ok=True)
    for name, text in {**parts, "version.txt": f"{asked.version}\n"}.items():
        (asked.folder / name).write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
