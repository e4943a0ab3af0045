#!/usr/bin/env bash
# packages.sh SOURCE BUILD CC CXX: packs BUILD for Debian as `--target package` does, has lintian judge the packages, reads what
# they hold and depend on, and unpacks them into a folder, where the program runs and a stranger's programs are linked by
# pkg-config, shared and static. Installs nothing and needs no root.
set -euo pipefail
source=$1 build=$2 cc=$3 cxx=$4
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'kill "${lintian:-}" 2>/dev/null || true; rm -rf "$scratch"' EXIT

quietly() { "$@" >"$scratch/log" 2>&1 || { echo "failed: $*"; cat "$scratch/log"; exit 1; }; }
step() { echo "- $*"; }
fail() { echo "$*"; exit 1; }
same() {  # WHAT WANTED FOUND: two lists, a thing a line
  local difference
  difference=$(diff <(sort <<<"$2") <(sort <<<"$3")) || fail "$1, wanted (<) and found (>):"$'\n'"$difference"
}

step "pack"
export DPKG_DEB_COMPRESSOR_LEVEL=1  # nobody downloads these
quietly cpack --config "$build/CPackConfig.cmake" -B "$scratch/packages"
cd "$scratch/packages"
libraries=(libletterlode0.1_* libletterlode-art0.1_*) development=(libletterlode-dev_*) program=(letterlode_*)
all=("${libraries[@]}" "${development[@]}" "${program[@]}")
same "packages" "$(printf '%s\n' "${all[@]}")" "$(printf '%s\n' ./*.deb | cut -c3-)"
[ ${#all[@]} = 4 ] || fail "these are not four packages: ${all[*]}"

lintian --allow-root --fail-on error,warning "${all[@]}" >"$scratch/lintian" 2>&1 &
lintian=$!  # takes its time: it is heard at the end

step "each depends on what it needs, and on nothing else"
depends() { dpkg-deb -f "$1" Depends | tr ',' '\n' | sed -E 's/^ *([^ ]+).*/\1/'; }
among() {  # PACKAGE PATTERN...
  local package=$1 pattern; shift
  pattern=$(IFS='|'; echo "$*")
  ! depends "$package" | grep -vxE "$pattern" || fail "$package depends on what stands above"
}
language='libc6|libgcc-s1|libstdc\+\+6'
among "${libraries[0]}" "$language" 'libicu[0-9]+'  # no font and nothing that draws
among "${libraries[1]}" "$language" 'libicu[0-9]+' 'libletterlode0\.1' 'libcairo2' 'libfontconfig1' 'libfreetype6' 'libharfbuzz0b' \
      'libpolyclipping[0-9]+' 'libpugixml1v5' 'libqpdf[0-9]+'
among "${program[0]}" "$language" 'libletterlode(-art)?0\.1' 'fonts-dejavu-core' 'libboost-program-options[0-9.]+' 'libtbb12'
for package in "${program[0]}" "${development[0]}"; do
  depends "$package" | grep -qx 'libletterlode0\.1' || fail "$package does not ask for the core library"
  depends "$package" | grep -qx 'libletterlode-art0\.1' || fail "$package does not ask for the artwork library"
done
grep -qx 'fonts-dejavu-core' <<<"$(depends "${program[0]}")" || fail "the program does not ask for its font"

step "unpacked, they hold what they should"
root=$scratch/root libdir=usr/lib/$(dpkg-architecture -qDEB_HOST_MULTIARCH)
files() { dpkg-deb --fsys-tarfile "$1" | tar -t | grep -v '/$' | cut -c3-; }
for package in "${all[@]}"; do
  dpkg-deb -x "$package" "$root"
  name=${package%%_*}
  ! files "$package" | grep -v '^usr/' || fail "$package holds files outside /usr"
  for document in copyright changelog.gz; do
    files "$package" | grep -qx "usr/share/doc/$name/$document" || fail "$package has no $document"
  done
  dates=$(dpkg-deb --fsys-tarfile "$package" | tar -tv --utc --full-time | awk '{ print $4 " " $5 }' | sort -u)
  [ "$(date -u -d "$(dpkg-parsechangelog -l "$source/lib/install/changelog" -S Date)" '+%F %T')" = "$dates" ] ||
    fail "$package has other dates than its changelog: $dates"
done
shared() { printf '%s\n' "$libdir/lib$1.so.0.1" "$libdir/lib$1.so.0.1.0" "usr/share/doc/lib${1}0.1/"{changelog.gz,copyright}; }
same "the core's files" "$(shared letterlode)" "$(files "${libraries[0]}")"
same "the artwork library's files" "$(shared letterlode-art)" "$(files "${libraries[1]}")"
headers=$(cd "$source/include" && find letterlode -name '*.h' -o -name '*.hpp')
same "headers" "$headers" "$(files "${development[0]}" | sed -n 's|^usr/include/||p')"
schemas=$(cd "$source/data" && find schema -type f)
same "schemas" "$schemas" "$(files "${development[0]}" | sed -n 's|^usr/share/letterlode/||p')"
for file in lib{letterlode,letterlode-art}.{a,so} cmake/letterlode/letterlodeConfig.cmake pkgconfig/letterlode{,-art}.pc; do
  files "${development[0]}" | grep -qx "$libdir/$file" || fail "the development package lacks $file"
done
for file in bin/letterlode share/man/man1/letterlode.1.gz share/bash-completion/completions/letterlode \
            share/zsh/vendor-completions/_letterlode share/doc/letterlode/README.md \
            share/letterlode/samples/tool-shed.txt share/letterlode/avoid/en.txt "${libdir#usr/}/letterlode/artwork.so"; do
  files "${program[0]}" | grep -qx "usr/$file" || fail "the program's package lacks $file"
done

step "the libraries name what they load, and no folder to find it in"
needed() { readelf -d "$root/$libdir/lib$1.so.0.1" | sed -nE 's/.*\(NEEDED\).*\[(.*)\]$/\1/p' | grep -vE '^ld-linux'; }
base=$'libc.so.6\nlibm.so.6\nlibgcc_s.so.1\nlibstdc++.so.6\nlibicuuc.so.ICU'
same "what the core loads" "$base"$'\nlibicui18n.so.ICU' "$(needed letterlode | sed -E 's/(libicu.*\.so\.)[0-9]+$/\1ICU/')"
same "what the artwork library loads" "$base"$'\nlibletterlode.so.0.1\nlibcairo.so.2\nlibfontconfig.so.1\nlibfreetype.so.6
libharfbuzz.so.0\nlibpolyclipping.so.22\nlibpugixml.so.1\nlibqpdf.so.29' "$(needed letterlode-art | sed -E 's/(libicu.*\.so\.)[0-9]+$/\1ICU/')"
for name in letterlode letterlode-art; do
  readelf -d "$root/$libdir/lib$name.so.0.1" | grep -q "SONAME.*\[lib$name\.so\.0\.1\]" || fail "lib$name has another SONAME"
done
for file in "$libdir/libletterlode.so.0.1" "$libdir/libletterlode-art.so.0.1" "$libdir/letterlode/artwork.so" usr/bin/letterlode; do
  ! readelf -d "$root/$file" | grep -E 'R(UN)?PATH' || fail "$file names a folder"
done
size=$(stat -Lc %s "$root/$libdir/libletterlode.so.0.1")
[ "$size" -lt 3000000 ] || fail "the core library has $size bytes, and is to stay under 3 MB"

step "the program runs from there"
export LD_LIBRARY_PATH=$root/$libdir
samples=$root/usr/share/letterlode/samples
quietly "$root/usr/bin/letterlode" make "$samples/tool-shed.txt" --blank 8x10in --surface second --out "$scratch/sign"
[ -s "$scratch/sign/job-sheet.pdf" ] || fail "it wrote no job sheet"

step "programs are linked there by pkg-config: shared, then static"
export PKG_CONFIG_SYSROOT_DIR=$root PKG_CONFIG_PATH=$root/$libdir/pkgconfig
# What stands in Requires.private is brought by the packages that the development package depends on.
for module in $(pkg-config --print-requires-private letterlode letterlode-art); do
  owner=$(dpkg-query -S "$(PKG_CONFIG_SYSROOT_DIR='' pkg-config --variable=pcfiledir "$module")/$module.pc" | cut -d: -f1)
  depends "${development[0]}" | grep -qx "$owner" || fail "$module is brought by $owner, which the development package does not ask for"
done
link() {  # PROGRAM COMPILER... : links what the flags ask for, and runs it
  local there=$scratch/$1; shift
  quietly "$@" -o "$there"
  quietly "$there"
}
statically() { pkg-config --static --cflags --libs "$1" | sed -E 's/-lletterlode(-art)?\b/-l:libletterlode\1.a/g'; }
# shellcheck disable=SC2046
{
  link c "$cc" -std=c99 "$here/linked_c/program.c" $(pkg-config --cflags --libs letterlode)
  link art "$cxx" -std=c++20 "$here/packed/program.cpp" $(pkg-config --cflags --libs letterlode-art)
  unset LD_LIBRARY_PATH
  link c-static "$cc" -std=c99 "$here/linked_c/program.c" $(statically letterlode)
  link art-static "$cxx" -std=c++20 "$here/packed/program.cpp" $(statically letterlode-art)
}
for name in c-static art-static; do
  ! readelf -d "$scratch/$name" | grep 'NEEDED.*libletterlode' || fail "$name is linked with a shared library of ours"
done
! readelf -d "$scratch/c-static" | grep -E 'NEEDED.*(cairo|fontconfig|freetype|harfbuzz)' || fail "the core brings what draws"

step "a component that lacks its dependencies is not found, and named where it is required"
quietly cmake -S "$here/packed" -B "$scratch/components" -DCMAKE_PREFIX_PATH="$root/usr" -DCMAKE_CXX_COMPILER="$cxx"
step "lintian finds neither errors nor things to warn of"
wait $lintian || { cat "$scratch/lintian"; exit 1; }
echo "four packages, $(du -ch "${all[@]}" | tail -1 | cut -f1)"
