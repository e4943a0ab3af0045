#!/usr/bin/env bash
# beside.sh SOURCE CC CXX: another project takes this one in with add_subdirectory, and links both kinds of library. As it compiles
# the core anyhow, it has ThreadSanitizer watch the C API's tests of threads.
set -euo pipefail
source=$1 cc=$2 cxx=$3
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

# Nothing here has to be fast: little of the optimiser, and a module at once.
cmake -G Ninja -S "$here/beside" -B "$scratch/build" -DCMAKE_BUILD_TYPE=Debug -DLETTERLODE_FOLDER="$source" \
      -DCMAKE_C_COMPILER="$cc" -DCMAKE_CXX_COMPILER="$cxx" -DCMAKE_UNITY_BUILD=ON \
      "-DCMAKE_C_FLAGS_DEBUG=-O1 -fsanitize=thread" "-DCMAKE_CXX_FLAGS_DEBUG=-O1 -fsanitize=thread" >"$scratch/log" ||
  { cat "$scratch/log"; exit 1; }
ninja -C "$scratch/build" -j2 beside_shared beside_static beside_threads beside_race >"$scratch/log" || { cat "$scratch/log"; exit 1; }
"$scratch/build/beside_shared"
"$scratch/build/beside_static"
if readelf -d "$scratch/build/beside_static" | grep -q 'NEEDED.*libletterlode'; then
  echo "the static program needs a shared letterlode"; exit 1
fi

# The sanitizer of g++ 12 fails where a kernel scatters memory widely.
watched() { if setarch -R true 2>/dev/null; then setarch -R "$@"; else "$@"; fi; }
watched "$scratch/build/beside_race" >"$scratch/log" 2>&1 && { echo "a race of two threads was not noticed"; exit 1; }
grep -q 'ThreadSanitizer: data race' "$scratch/log" || { echo "it was no race that was noticed:"; cat "$scratch/log"; exit 1; }
watched "$scratch/build/beside_threads"
