#!/usr/bin/env python3
"""headers.py CC CXX INCLUDE JOBS: each public header compiles by itself, under strict flags, and takes nothing with it but the
standard library.

Which files a header takes with it the compiler says; Debian says whose they are. ICU, JSON, Boost, Cairo and the like stay out
of what a user compiles.
"""
import concurrent.futures
import pathlib
import re
import subprocess
import sys
import tempfile

STRICT = ["-Wall", "-Wextra", "-Wpedantic", "-Wshadow", "-Wconversion", "-pedantic-errors", "-Werror", "-fsyntax-only"]
WAYS = {
    ".hpp": [("cxx", ["-x", "c++", "-std=c++20"])],
    ".h": [("cc", ["-x", "c", "-std=c99", "-Wstrict-prototypes", "-Wold-style-definition"]), ("cxx", ["-x", "c++", "-std=c++11"])],
}
# The C library, the kernel's headers, the C++ library, and the compiler's own.
STANDARD = re.compile(r"(libc6-dev|linux-libc-dev|libstdc\+\+-\d+-dev|libgcc-\d+-dev|libclang-common-\d+-dev)\b")


def compiled(compiler, flags, include, header, folder):
    """The compiler's complaints, and the files that were read."""
    files = pathlib.Path(folder) / f"{header.name}.{compiler.rpartition('/')[2]}.d"
    run = subprocess.run([compiler, *flags, *STRICT, f"-I{include}", "-include", header, "-MD", "-MF", files, "/dev/null"],
                         capture_output=True, text=True)
    if run.returncode or run.stderr:
        return f"{header.name} does not compile by itself ({compiler} {' '.join(flags)}):\n{run.stderr}", []
    return "", files.read_text().replace("\\\n", " ").split()[1:]


def droppable(header):
    """Declarations of exported functions whose result may be dropped without a word."""
    exported = [line for line in header.read_text(encoding="utf-8").splitlines() if re.match(r"[^#/]*\bLODE_API [^;]*\(", line)]
    return [line for line in exported if not re.search(r"\[\[nodiscard\]\]|LODE_API void ", line)]


def main():
    compilers = dict(zip(("cc", "cxx"), sys.argv[1:3]))
    include = pathlib.Path(sys.argv[3])
    headers = sorted((include / "letterlode").glob("*.h*"))
    if len(headers) < 17:
        sys.exit(f"only {len(headers)} headers in {include}")
    faults, read = [], {}
    with tempfile.TemporaryDirectory() as folder, concurrent.futures.ThreadPoolExecutor(int(sys.argv[4])) as pool:
        jobs = [(header, pool.submit(compiled, compilers[compiler], flags, include, header, folder))
                for header in headers for compiler, flags in WAYS[header.suffix]]
        for header, job in jobs:
            complaint, files = job.result()
            if complaint:
                faults.append(complaint)
            for file in files:
                file = pathlib.Path(file).resolve()
                if include.resolve() not in file.parents and str(file) != "/dev/null":
                    read.setdefault(str(file), header.name)
    owners = subprocess.run(["dpkg", "-S", *read], capture_output=True, text=True)
    if owners.stderr:
        faults.append(f"nobody knows whose these files are:\n{owners.stderr}")
    for line in owners.stdout.splitlines():
        package, _, file = line.partition(": ")
        if not STANDARD.match(package):
            faults.append(f"{read[file]} takes {file} of {package} with it")
    for header in headers:
        if header.suffix == ".hpp":
            faults += [f"{header.name}: a result that can be dropped: {line}" for line in droppable(header)]
    if faults:
        sys.exit("\n".join(faults))
    print(f"{len(headers)} headers, each by itself, with {len(read)} files of the standard libraries")


if __name__ == "__main__":
    main()
