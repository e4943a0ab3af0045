#!/usr/bin/env bash
# exports.sh {C_HEADER LIBRARY}...: every symbol that a shared library exports, weak ones too, is of namespace lode or starts
# with lode_; and the C functions that it exports are those that its header declares, no more and no less.
set -euo pipefail
while [ $# -gt 0 ]; do
  header=$1 library=$2; shift 2
  # Absolute symbols (kind A) are names of versions, not of things.
  exported=$(nm -D --defined-only --demangle "$library" | sed -E 's/^[0-9a-f]* //' | grep -v '^A ' | cut -c3-)
  [ -n "$exported" ] || { echo "$library exports nothing"; exit 1; }
  strangers=$(grep -v -E '^((vtable|typeinfo|typeinfo name|VTT) for )?(lode::|lode_)' <<<"$exported" || true)
  [ -z "$strangers" ] || { printf '%s exports what is none of its interface:\n%s\n' "$library" "$strangers"; exit 1; }
  echo "$(basename "$library"): $(wc -l <<<"$exported") symbols, all of the interface"
  declared=$(grep -oE '^LODE_API [^(]*\b(lode_[a-z_]+)\(' "$header" | grep -oE 'lode_[a-z_]+\($' | tr -d '(' | sort)
  exported=$(grep '^lode_' <<<"$exported" | sort)
  if ! difference=$(diff <(echo "$declared") <(echo "$exported")); then
    printf 'declared in %s (<) is not what is exported (>):\n%s\n' "$(basename "$header")" "$difference"; exit 1
  fi
  echo "$(wc -l <<<"$declared") functions of $(basename "$header"), all exported"
done
