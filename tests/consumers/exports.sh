#!/usr/bin/env bash
# exports.sh LIBRARY...: every strong symbol that a shared library exports is of namespace lode or starts with lode_.
# Weak symbols are passed over: they are instances of the standard library's templates, which that library declares visible.
set -euo pipefail
for library in "$@"; do
  exported=$(nm -D --defined-only --demangle "$library" | sed -E 's/^[0-9a-f]* //')
  strong=$(grep -E '^[TDBR] ' <<<"$exported" | cut -c3- || true)
  [ -n "$strong" ] || { echo "$library exports nothing"; exit 1; }
  strangers=$(grep -v -E '^((vtable|typeinfo|typeinfo name|VTT|guard variable) for )?(lode::|lode_)' <<<"$strong" || true)
  [ -z "$strangers" ] || { printf '%s exports what is none of its interface:\n%s\n' "$library" "$strangers"; exit 1; }
  echo "$(basename "$library"): $(wc -l <<<"$strong") symbols, all of the interface"
done
