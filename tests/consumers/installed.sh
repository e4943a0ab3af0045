#!/usr/bin/env bash
# installed.sh SOURCE BUILD CC CXX: installs BUILD into a scratch folder, moves that elsewhere, and looks at all that is there: texts,
# headers, components of the CMake package, pkg-config's files, and the program. What a stranger does with it is in strangers.sh.
set -euo pipefail
source=$1 build=$2 cc=$3 cxx=$4
source "$(dirname "$0")/tree.sh"

step "install, and move the tree"
installed_and_moved "$build"

step "no installed text file names the folder that it was built or first installed in"
! grep -rIl -e "$build" -e "$scratch/first place" "$prefix" || fail "these files do"

step "the public headers are all there, and as they were judged one by one"
diff -r "$source/include/letterlode" "$prefix/include/letterlode"
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
step "find_package: the whole C API, from C99"
build_and_run linked_c "" c_program

step "pkg-config, with artwork"
export PKG_CONFIG_PATH=$libraries/pkgconfig
eval "libdir=$(pkg-config --variable=libdir letterlode)"
[ "$(realpath "$libdir")" = "$libraries" ] || fail "letterlode.pc points to $libdir"
eval "quietly \"\$cc\" -std=c99 -pedantic-errors -Wall -Wextra -Werror \"\$here/c_art/sign.c\" -o \"\$scratch/sign\" \
  $(pkg-config --cflags --libs letterlode-art)"
LD_LIBRARY_PATH=$libraries quietly "$scratch/sign" "$scratch/sign.svg" "$scratch/sheet.pdf"

step "find_package, with artwork from C"
cp -r "$here/c_art" "$scratch"
quietly cmake -G Ninja -S "$scratch/c_art" -B "$scratch/c_art/build" -DCMAKE_C_COMPILER="$cc" -DCMAKE_PREFIX_PATH="$prefix"
quietly cmake --build "$scratch/c_art/build"
quietly "$scratch/c_art/build/sign" "$scratch/again.svg" "$scratch/again.pdf"
cmp "$scratch/sign.svg" "$scratch/again.svg"
cmp "$scratch/sheet.pdf" "$scratch/again.pdf"

step "it draws what the installed program draws, and prints a worksheet and its key"
printf 'Parsnip\nSweet pea\nJalapeño\nLeek\n' >"$scratch/bed.txt"
quietly "$prefix/bin/letterlode" make "$scratch/bed.txt" --blank 8x10in --surface second --heading Vegetables --fix --out "$scratch/made"
cmp "$scratch/sign.svg" "$scratch/made/artwork.svg"
quietly pdftotext "$scratch/sheet.pdf" "$scratch/sheet.txt"
[ "$(grep -c 'Vegetable bed' "$scratch/sheet.txt")" = 2 ] || { cat "$scratch/sheet.txt"; fail "the PDF has not two pages of that title"; }

step "the installed program finds its libraries from its new place"
quietly env -u LD_LIBRARY_PATH "$prefix/bin/letterlode" --version
quietly env -u LD_LIBRARY_PATH "$prefix/bin/letterlode" print "$scratch/bed.txt" --out "$scratch/bed.pdf"

step "with an absolute library folder the pkg-config files name it"
quietly cmake -G Ninja -S "$source" -B "$scratch/absolute" -DLODE_TESTS=OFF -DLODE_BENCH=OFF -DCMAKE_C_COMPILER="$cc" \
        -DCMAKE_CXX_COMPILER="$cxx" -DCMAKE_INSTALL_PREFIX="$scratch/one" -DCMAKE_INSTALL_LIBDIR="$scratch/two/lib"
for name in letterlode letterlode-art; do
  folders=$(PKG_CONFIG_PATH=$scratch/absolute/package; pkg-config --variable=libdir $name; pkg-config --variable=includedir $name)
  [ "$folders" = "$scratch/two/lib"$'\n'"$scratch/one/include" ] || { echo "$name.pc names other folders: $folders"; exit 1; }
done
echo "all of it was found and run"
