#!/usr/bin/env bash
# strangers.sh BUILD NODE_MODULES CC CXX PYTHON: programs of strangers, in C, C++, Python and Node.js, against an installed tree
# that was moved, and from which the library of artwork was taken away. They all do the same, and must print the same.
set -euo pipefail
build=$1 node_modules=$2 cc=$3 cxx=$4 python=$5
source "$(dirname "$0")/tree.sh"

step "install, move the tree, and take the library of artwork out of it"
installed_and_moved "$build"
printf 'Parsnip\nSweet pea\nJalapeño\nLeek\n' | "$prefix/bin/letterlode" make - --grid 10x8 >"$scratch/made"
find "$prefix" \( -name '*letterlode-art*' -o -name 'art*-targets*.cmake' \) -delete
step "without it the program makes puzzles still, and says what it cannot draw for"
printf 'Parsnip\nSweet pea\nJalapeño\nLeek\n' | "$prefix/bin/letterlode" make - --grid 10x8 | cmp - "$scratch/made"
printf '{"words":["Parsnip","Leek"],"seed":7}\n' | "$prefix/bin/letterlode" batch 2>"$scratch/log" | grep -q '"certified":true' || fail "no batch"
code=0; printf 'Leek\nParsnip\n' | "$prefix/bin/letterlode" print - >"$scratch/log" 2>&1 || code=$?
[ $code = 3 ] && grep -q 'cannot be loaded.*letterlode-art' "$scratch/log" || { cat "$scratch/log"; fail "print ends with $code"; }
cp -r "$here"/{c,cpp,python,node} "$scratch"
mkdir "$scratch/said"

# says NAME COMMAND...: keeps what a stranger prints, to be compared.
says() {
  local name=$1; shift
  step "$name"
  "$@" >"$scratch/said/$name" 2>"$scratch/log" </dev/null || { cat "$scratch/log"; fail "failed: $*"; }
  [ ! -s "$scratch/log" ] || { cat "$scratch/log"; fail "$name complains"; }
}
found() { env LD_LIBRARY_PATH="$libraries" "$@"; }
loads() { found ldd "$1" | sed -nE 's/^\s*(\S*\/)?(\S+)\.so.*/\2/p' | sort | xargs; }
links_statically() { case " $(loads "$1") " in *" libletterlode "*) fail "$1 loads the shared library" ;; esac; }

# by_pkg_config COMPILER LANGUAGE SOURCE OUTPUT [--static]: the line that stands at the top of the source. What pkg-config prints
# is quoted for a shell, since there are blanks in it.
by_pkg_config() {
  local compiler=$1 language=$2 source=$3 output=$4; shift 4
  eval "quietly \"\$compiler\" -std=$language -pedantic-errors -Wall -Wextra -Werror \"\$source\" -o \"\$output\" \
    $(pkg-config "$@" --cflags --libs letterlode)"
}
export PKG_CONFIG_PATH=$libraries/pkgconfig
by_pkg_config "$cc" c99 "$scratch/c/bed.c" "$scratch/c/bed"
says "C by pkg-config" found "$scratch/c/bed"
by_pkg_config "$cxx" c++20 "$scratch/cpp/bed.cpp" "$scratch/cpp/bed"
says "C++ by pkg-config" found "$scratch/cpp/bed"

sed -n '/^```c$/,/^```$/{/^```/!p}' "$here/../../README.md" >"$scratch/readme.c"
by_pkg_config "$cc" c99 "$scratch/readme.c" "$scratch/readme"
step "what the README has in C"
quietly found "$scratch/readme"
grep -q '^Sweet pea$' "$scratch/log" || fail "it prints no puzzle"

step "a program with the core alone loads no library of fonts or drawing"
may_load='libletterlode|libicu(uc|i18n|data)|libstdc\+\+|libm|libgcc_s|libc|ld-linux.*|linux-.*'
for program in "$scratch"/{c,cpp}/bed; do
  needs=$(loads "$program")
  others=$(tr ' ' '\n' <<<"$needs" | grep -vxE "$may_load" || true)
  [ -z "$others" ] || fail "it loads $(xargs <<<"$others")"
  case " $needs " in *" libletterlode "*) ;; *) fail "it does not even load libletterlode: $needs" ;; esac
done

# Where both kinds of library lie in a folder the linker takes the shared one: a user of the static one has that alone.
static_tree="$scratch/static tree"
cp -r "$prefix" "$static_tree"
find "$static_tree" -name '*.so*' -delete
export PKG_CONFIG_PATH=$static_tree/${libraries#"$prefix/"}/pkgconfig
by_pkg_config "$cc" c99 "$scratch/c/bed.c" "$scratch/c/static" --static
links_statically "$scratch/c/static"
says "C by pkg-config, static" "$scratch/c/static"
by_pkg_config "$cxx" c++20 "$scratch/cpp/bed.cpp" "$scratch/cpp/static" --static
links_statically "$scratch/cpp/static"
says "C++ by pkg-config, static" "$scratch/cpp/static"
unset PKG_CONFIG_PATH

by_cmake() {  # FOLDER: a CMake project of one program
  quietly cmake -G Ninja -S "$scratch/$1" -B "$scratch/$1/build" -DCMAKE_C_COMPILER="$cc" -DCMAKE_CXX_COMPILER="$cxx" \
    -DCMAKE_PREFIX_PATH="$prefix" -DCMAKE_BUILD_TYPE=Debug
  quietly cmake --build "$scratch/$1/build"
}
for language in c cpp; do
  by_cmake $language
  says "$language by CMake" "$scratch/$language/build/bed"
  # The static library: what the comment in the file of CMake says.
  cp -r "$here/$language" "$scratch/$language-static"
  sed -i 's/\<core\>/core-static/; s/LANGUAGES C)/LANGUAGES C CXX)/' "$scratch/$language-static/CMakeLists.txt"
  by_cmake $language-static
  links_statically "$scratch/$language-static/build/bed"
  says "$language by CMake, static" "$scratch/$language-static/build/bed"
done

says "Python" found "$python" "$scratch/python/bed.py"

command -v node >/dev/null || fail "there is no node here, which data/packages.txt lists: bash tests/run suite installs it"
# The one thing that no Debian package brings. Without it the others are judged all the same, and CTest tells the test as skipped.
if cmp -s "$here/node/package-lock.json" "$node_modules/fetched-by"; then
  ln -s "$(realpath "$node_modules")" "$scratch/node/node_modules"
  says "Node.js" found node "$scratch/node/bed.js"
  lacking=
else
  lacking="koffi, by which Node.js calls C, was not fetched into $node_modules; with a network do that by
  bash -c 'source data/setup.sh && fetch_node_packages'"
fi

step "all say the same, and it is true"
"$python" "$here/judge.py" "$scratch/made" "$scratch"/said/*

step "another build of the library, of the same SONAME, takes the place of the first"
soname=$(readelf -d "$libraries/libletterlode.so" | sed -nE 's/.*SONAME.*\[(.*)\]/\1/p')
newer=${soname#*.so.}.99
printf '#include <letterlode/version.hpp>\nstd::string_view lode::version() { return "%s"; }\n' "$newer" >"$scratch/newer.cpp"
export PKG_CONFIG_PATH=$static_tree/${libraries#"$prefix/"}/pkgconfig
eval "quietly \"\$cxx\" -std=c++20 -shared -fPIC \"\$scratch/newer.cpp\" -o \"\$scratch/newer.so\" -Wl,-soname,$soname \
  -Wl,-z,muldefs \"-Wl,--version-script=\$here/../../lib/exports.map\" \
  -Wl,--whole-archive \"\$static_tree/${libraries#"$prefix/"}/libletterlode.a\" -Wl,--no-whole-archive \
  $(pkg-config --static --cflags --libs letterlode)"
cp "$scratch/newer.so" "$(realpath "$libraries/libletterlode.so")"
for stranger in "c/bed" "cpp/bed" "c/build/bed" "cpp/build/bed"; do
  found "$scratch/$stranger" >"$scratch/now" 2>"$scratch/log" || { cat "$scratch/log"; fail "$stranger does not run with it"; }
  [ "$(head -1 "$scratch/now")" = "letterlode $newer" ] || fail "$stranger has not loaded it: $(head -1 "$scratch/now")"
  grep -q "^compiled with ${soname#*.so.}" "$scratch/log" || fail "$stranger does not tell that it was compiled with another"
  diff <(sed 1d "$scratch/said/C by pkg-config") <(sed 1d "$scratch/now") || fail "$stranger does other things with it"
done
[ -z "$lacking" ] || { echo "all but Node.js were served: $lacking"; exit 77; }
echo "all strangers were served"
