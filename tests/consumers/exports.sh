#!/usr/bin/env bash
# exports.sh C_HEADER LIBRARY...: every symbol that a shared library exports, weak ones too, is of namespace lode or starts
# with lode_; and the C functions that the libraries export are those that the header declares, no more and no less.
set -euo pipefail
header=$1; shift
c_functions=
for library in "$@"; do
  # Absolute symbols (kind A) are names of versions, not of things.
  exported=$(nm -D --defined-only --demangle "$library" | sed -E 's/^[0-9a-f]* //' | grep -v '^A ' | cut -c3-)
  [ -n "$exported" ] || { echo "$library exports nothing"; exit 1; }
  strangers=$(grep -v -E '^((vtable|typeinfo|typeinfo name|VTT) for )?(lode::|lode_)' <<<"$exported" || true)
  [ -z "$strangers" ] || { printf '%s exports what is none of its interface:\n%s\n' "$library" "$strangers"; exit 1; }
  c_functions+=$(grep '^lode_' <<<"$exported" || true)$'\n'
  echo "$(basename "$library"): $(wc -l <<<"$exported") symbols, all of the interface"
done

declared=$(grep -oE '^LODE_API [^(]*\b(lode_[a-z_]+)\(' "$header" | grep -oE 'lode_[a-z_]+\($' | tr -d '(' | sort)
exported=$(grep . <<<"$c_functions" | sort)
if ! difference=$(diff <(echo "$declared") <(echo "$exported")); then
  printf 'declared in %s (<) is not what is exported (>):\n%s\n' "$(basename "$header")" "$difference"; exit 1
fi
echo "$(wc -l <<<"$declared") functions of $(basename "$header"), all exported"
