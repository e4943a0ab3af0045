#!/usr/bin/env bash
# installed.sh SOURCE BUILD CC CXX: installs BUILD into a scratch folder, moves that elsewhere, and lets strangers' programs find
# it there: through CMake and through pkg-config, shared and static.
set -euo pipefail
source=$1 build=$2 cc=$3 cxx=$4
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

quietly() { "$@" >"$scratch/log" 2>&1 || { echo "failed: $*"; cat "$scratch/log"; exit 1; }; }
step() { echo "- $*"; }

step "install, and move the tree"
quietly cmake --install "$build" --prefix "$scratch/first place"
mv "$scratch/first place" "$scratch/moved"
prefix=$scratch/moved

step "no installed text file names the folder that it was built or first installed in"
if grep -rIl -e "$build" -e "$scratch/first place" "$prefix"; then echo "these files do"; exit 1; fi

step "each public header compiles alone"
find "$prefix/include" -name '*.hpp' | while read -r header; do
  quietly "$cxx" -std=c++20 -Wall -Wextra -Wpedantic -Werror -fsyntax-only -I"$prefix/include" -include "$header" -x c++ /dev/null
done
header=$prefix/include/letterlode/letterlode.h
quietly "$cc" -std=c99 -pedantic-errors -Wall -Wextra -Werror -Wstrict-prototypes -fsyntax-only -include "$header" -x c /dev/null
quietly "$cxx" -std=c++11 -Wall -Wextra -Wpedantic -Werror -fsyntax-only -include "$header" -x c++ /dev/null

build_and_run() {  # FOLDER LINKAGE PROGRAM...: the stranger's CMake project
  local folder=$1 linkage=$2; shift 2
  local there=$scratch/build-$folder$linkage
  quietly cmake -G Ninja -S "$here/$folder" -B "$there" -DCMAKE_BUILD_TYPE=Debug -DCMAKE_C_COMPILER="$cc" \
          -DCMAKE_CXX_COMPILER="$cxx" -DCMAKE_PREFIX_PATH="$prefix" -DLINKAGE="$linkage"
  quietly cmake --build "$there"
  for program in "$@"; do
    quietly "$there/$program"
    if [ "$linkage" = -static ] && readelf -d "$there/$program" | grep -q 'NEEDED.*libletterlode'; then
      echo "$program is linked with the shared library"; exit 1
    fi
  done
}
step "find_package: shared, then static"
build_and_run linked "" cpp_program cpp_program_with_art
build_and_run linked -static cpp_program cpp_program_with_art
step "find_package, from C99: shared, then static"
build_and_run linked_c "" c_program
build_and_run linked_c -static c_program

step "pkg-config: shared, then static"
export PKG_CONFIG_PATH; PKG_CONFIG_PATH=$(dirname "$(find "$prefix" -name letterlode.pc)")
libraries=$(pkg-config --variable=libdir letterlode)
[ "$(realpath "$libraries")" = "$(dirname "$PKG_CONFIG_PATH")" ] || { echo "letterlode.pc points to $libraries"; exit 1; }
# shellcheck disable=SC2046
quietly "$cxx" -std=c++20 "$here/linked/program.cpp" -o "$scratch/by-pkg-config" $(pkg-config --cflags --libs letterlode-art letterlode)
LD_LIBRARY_PATH=$libraries quietly "$scratch/by-pkg-config"
# shellcheck disable=SC2046
quietly "$cc" -std=c99 "$here/linked_c/program.c" -o "$scratch/c-by-pkg-config" $(pkg-config --cflags --libs letterlode)
LD_LIBRARY_PATH=$libraries quietly "$scratch/c-by-pkg-config"
mkdir "$scratch/only-static"; cp "$libraries"/libletterlode*.a "$scratch/only-static"
# shellcheck disable=SC2046
quietly "$cxx" -std=c++20 "$here/linked/program.cpp" -o "$scratch/static-by-pkg-config" -L"$scratch/only-static" \
        $(pkg-config --static --cflags --libs letterlode | sed "s|-L$libraries||")
quietly "$scratch/static-by-pkg-config"

step "the installed program finds its libraries from its new place"
quietly env -u LD_LIBRARY_PATH "$prefix/bin/letterlode" --version

step "with an absolute library folder the pkg-config files name it"
quietly cmake -G Ninja -S "$source" -B "$scratch/absolute" -DLODE_TESTS=OFF -DLODE_BENCH=OFF -DCMAKE_C_COMPILER="$cc" \
        -DCMAKE_CXX_COMPILER="$cxx" -DCMAKE_INSTALL_PREFIX="$scratch/one" -DCMAKE_INSTALL_LIBDIR="$scratch/two/lib"
for name in letterlode letterlode-art; do
  folders=$(PKG_CONFIG_PATH=$scratch/absolute/package; pkg-config --variable=libdir $name; pkg-config --variable=includedir $name)
  [ "$folders" = "$scratch/two/lib"$'\n'"$scratch/one/include" ] || { echo "$name.pc names other folders: $folders"; exit 1; }
done
echo "all of it was found and run"
