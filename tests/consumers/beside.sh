#!/usr/bin/env bash
# beside.sh SOURCE CC CXX: another project takes this one in with add_subdirectory, and links both kinds of library.
set -euo pipefail
source=$1 cc=$2 cxx=$3
here=$(cd "$(dirname "$0")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

# Nothing here has to be fast, only to link: no optimiser, and a module at once.
cmake -G Ninja -S "$here/beside" -B "$scratch/build" -DCMAKE_BUILD_TYPE=Debug -DLETTERLODE_FOLDER="$source" \
      -DCMAKE_C_COMPILER="$cc" -DCMAKE_CXX_COMPILER="$cxx" -DCMAKE_CXX_FLAGS_DEBUG=-O0 \
      -DCMAKE_UNITY_BUILD=ON >"$scratch/log" ||
  { cat "$scratch/log"; exit 1; }
ninja -C "$scratch/build" -j2 beside_shared beside_static >"$scratch/log" || { cat "$scratch/log"; exit 1; }
"$scratch/build/beside_shared"
"$scratch/build/beside_static"
if readelf -d "$scratch/build/beside_static" | grep -q 'NEEDED.*libletterlode'; then
  echo "the static program needs a shared letterlode"; exit 1
fi
