#!/usr/bin/env python3
"""The README's tables of packages against data/packages.txt, and the licences in them against Debian's copyright files.

Only permissive licences and the LGPL may be linked into the product. The judge is /usr/share/doc/PACKAGE/copyright of this machine:
each licence that the README names must leave its mark there.
"""
import json
import pathlib
import re
import unittest

PROJECT = pathlib.Path(__file__).resolve().parents[2]

# What a licence's name or text looks like in a Debian copyright file.
MARKS = {
    "BSL-1.0": r"any person or organization\s+obtaining a copy of the software|License: BSL-1\.0",
    "ICU": r"Upstream-Name: ICU[\s\S]*Permission is hereby granted, free of charge",
    "NCSA": r"NSCA|University of Illinois",
    "MIT": r"Permission is hereby granted, free of charge",
    "HPND": r"Permission to use, copy, modify, distribute and sell this software and its",
    "HPND-sell-variant": r"Permission to use, copy, modify, distribute, and sell this software and its",
    "MIT-Modern-Variant": r"without written agreement and without\s+license or\s+royalty fees",
    "FTL": r"FreeType Project LICENSE|License: FTL",
    "GPL-2.0-or-later": r"GPL-2\+|GNU General Public License",
    "GPL-2.0-only": r"License: GPL-2\.0|License: GPL-2\n|GPL\(v2\)",
    "GPL-3.0-only": r"License: GPL-3\n",
    "LGPL-2.1-only": r"LGPL-2\.1|LGPL \(v2\.1\)",
    "LGPL-3.0-or-later": r"LGPL-3\+",
    "MPL-2.0": r"MPL-2\.0",
    "SISSL": r"LGPL or SISSL",
    "CC-BY-3.0": r"Creative Commons, Attribution 3\.0",
    "LicenseRef-Public-Domain": r"Word list license: Public Domain",
    "LGPL-2.1-or-later": r"LGPL-2",
    "MPL-1.1": r"MPL\) version 1\.1|MPL \(1\.1\)",
    "Bitstream-Vera": r"[Bb]itstream[ -][Vv]era",
    "BSD-3-Clause": r"BSD-3-Clause|Neither the name",
    "Apache-2.0": r"Apache-2\.0|Apache License",
    "Apache-2.0 WITH LLVM-exception": r"APACHE-2-LLVM-EXCEPTIONS|Apache-2\.0 \+ LLVM exception",
    "GPL-3.0-or-later": r"GPL-3\+",
    "GPL-3.0-or-later WITH GCC-exception-3.1": r"GCC Runtime Library Exception",
    "SSH-OpenSSH": r"License: OpenSSH",
    "ISC": r"Permission to use, copy, modify, and(/or)? distribute this software for any\s+purpose with or without fee",
    "Artistic-2.0": r"License: Artistic-2\.0",
    "PSF-2.0": r"PYTHON SOFTWARE FOUNDATION LICENSE VERSION 2",
    "LicenseRef-SCOWL": r"SCOWL[\s\S]*Permission to use, copy, modify, distribute and sell these word\s+lists",
    "Unicode-DFS-2016": r"License:\s+Unicode-DFS-2016|UNICODE, INC\. LICENSE AGREEMENT - DATA FILES AND SOFTWARE",
}
# Packages that only lead to another, in which the software and its licence are.
LEADS_TO = {"libboost-dev": "libboost1.74-dev", "libboost-program-options-dev": "libboost-program-options1.74-dev", "clang": "clang-14", "g++": "g++-12"}
MAY_BE_LINKED = {"BSL-1.0", "ICU", "NCSA", "MIT", "HPND", "HPND-sell-variant", "MIT-Modern-Variant", "FTL", "LGPL-2.1-only",
                 "LGPL-2.1-or-later", "MPL-1.1", "Bitstream-Vera", "BSD-3-Clause", "Apache-2.0", "ISC"}


def listed():
    """Packages by their section."""
    sections, section = {}, None
    for line in (PROJECT / "data/packages.txt").read_text("utf-8").splitlines():
        line = line.split("#")[0].strip()
        if line.startswith("["):
            section = line.strip("[]")
            sections[section] = []
        elif line:
            sections[section].append(line)
    return sections


def licences():
    """Licence expressions by package, from the README's tables with a last column "licence". A row may hold several packages
    and as many licences."""
    found, in_table = {}, False
    for line in (PROJECT / "README.md").read_text("utf-8").splitlines():
        cells = [cell.strip() for cell in line.strip("|").split("|")]
        if cells[-1] == "licence":
            in_table = True
        elif not line.startswith("|"):
            in_table = False
        elif in_table and not cells[0].startswith("---"):
            packages, expressions = cells[0].split(", "), cells[-1].split(", ")
            if len(packages) != len(expressions):
                raise ValueError(f"{len(packages)} packages, {len(expressions)} licences: {line}")
            found.update(zip(packages, expressions))
    return found


def permitted(expression):
    """Whether every part of an AND is, with a choice for each OR, a licence that may be linked."""
    return all(any(choice in MAY_BE_LINKED for choice in part.split(" OR ")) for part in expression.split(" AND "))


class DependencyTest(unittest.TestCase):
    def test_every_listed_package_stands_in_the_readme_with_a_licence(self):
        listed_packages = [package for packages in listed().values() for package in packages]
        self.assertGreater(len(listed_packages), 20)
        self.assertEqual([package for package in listed_packages if package not in licences()], [])

    def test_the_readme_names_no_package_that_is_not_listed(self):
        everything = {package for packages in listed().values() for package in packages}
        self.assertEqual(set(licences()) - everything, set())

    def test_only_permissive_and_lgpl_libraries_are_linked(self):
        for package in listed()["link"] + listed()["run"]:
            with self.subTest(package):
                self.assertTrue(permitted(licences()[package]), licences()[package])
        self.assertFalse(permitted("GPL-3.0-or-later"))
        self.assertFalse(permitted("MIT AND GPL-2.0-or-later"))

    def test_debian_says_the_same_of_each_licence(self):
        for package, expression in licences().items():
            copyright_file = pathlib.Path("/usr/share/doc") / LEADS_TO.get(package, package) / "copyright"
            if package in listed()["peers"] + listed()["machines"] + listed()["npm"] and not copyright_file.exists():
                continue  # the sections that not every set-up installs
            text = copyright_file.read_text("utf-8", "replace")
            for licence in re.split(r" OR | AND ", expression):
                with self.subTest(f"{package}: {licence}"):
                    self.assertRegex(text, re.compile(MARKS[licence], re.IGNORECASE))

    def test_what_npm_fetches_stands_in_the_readme_with_its_licence(self):
        lock = json.loads((PROJECT / "tests/consumers/node/package-lock.json").read_text("utf-8"))["packages"]
        asked = lock[""]["dependencies"]
        for package in asked:
            with self.subTest(package):
                self.assertIn(f"{package} ({lock[f'node_modules/{package}']['license']})", (PROJECT / "README.md").read_text("utf-8"))
        for path, package in lock.items():
            if path:
                with self.subTest(path):
                    self.assertRegex(package["integrity"], r"^sha512-")
                    self.assertTrue(package["resolved"].startswith("https://registry.npmjs.org/"))
                    self.assertEqual(package["license"], "MIT")

    def test_what_cmake_looks_for_is_listed(self):
        # Each library that the build asks for, and the package that brings it.
        bringing = {"ICU": "libicu-dev", "range-v3": "librange-v3-dev", "nlohmann_json": "nlohmann-json3-dev",
                    "Boost": "libboost-program-options-dev", "Catch2": "catch2", "benchmark": "libbenchmark-dev",
                    "PkgConfig": "pkg-config", "Threads": "g++", "Python3": "python3",
                    "TBB": "libtbb-dev"}
        everything = {package for packages in listed().values() for package in packages}
        for file in [PROJECT / "CMakeLists.txt", *(path for folder in ("lib", "cli", "tests", "bench")
                                                   for path in (PROJECT / folder).rglob("CMakeLists.txt"))]:
            if "consumers" in file.parts:
                continue
            for name in re.findall(r"find_package\((\S+)", file.read_text("utf-8")):
                with self.subTest(f"{file.relative_to(PROJECT)}: {name}"):
                    self.assertIn(bringing[name], everything)


class LinkTest(unittest.TestCase):
    def test_files_that_the_documents_point_to_are_there(self):
        for document in ("README.md", "DEVELOPERS.md"):
            text = (PROJECT / document).read_text("utf-8")
            for target in re.findall(r"\]\(([^)#:]+)\)", text) + re.findall(r"(?<![/\w])(?:data|tests|cli|lib|bench|include)/[\w./-]*\w", text):
                with self.subTest(f"{document}: {target}"):
                    self.assertTrue((PROJECT / target).exists())


if __name__ == "__main__":
    unittest.main()
