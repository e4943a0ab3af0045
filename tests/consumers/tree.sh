# What the scripts here share: `source tree.sh`. It gives a scratch folder that is removed at the end.
# shellcheck shell=bash
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

step() { echo "- $*"; }
fail() { echo "$*"; exit 1; }
quietly() { "$@" >"$scratch/log" 2>&1 || { echo "failed: $*"; cat "$scratch/log"; exit 1; }; }

# installed_and_moved BUILD: the tree is then in $prefix, whose path has blanks in it, as a user's folder may.
installed_and_moved() {
  quietly cmake --install "$1" --prefix "$scratch/first place"
  prefix="$scratch/another place"
  mv "$scratch/first place" "$prefix"
  libraries=$(dirname "$(find "$prefix" -name libletterlode.so)")
}
