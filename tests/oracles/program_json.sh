#!/usr/bin/env bash
# program_json.sh PROGRAM: what the program writes as JSON, held to the schemas by a validator that is not ours.
set -euo pipefail
program=$(realpath "$1")
here=$(cd "$(dirname "$0")" && pwd)
samples=$here/../../data/samples
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

# judged KIND CODE NAME ARGUMENT...: runs the program, which must end with this code, and judges its standard output.
judged() {
  local kind=$1 code=$2 name=$3 ended=0; shift 3
  "$program" "$@" >"$scratch/$name.json" 2>"$scratch/$name.err" || ended=$?
  [ "$ended" = "$code" ] || { echo "exit code $ended instead of $code: letterlode $*"; cat "$scratch/$name.err"; exit 1; }
  /usr/bin/python3 "$here/schema_test.py" --kind "$kind" "$scratch/$name.json"
}

judged puzzle 0 sign make "$samples/tool-shed.txt" --json
judged puzzle 0 heart make "$samples/worksheet.txt" --shape heart --directions all --locale en --json
judged puzzle 0 shed make "$samples/worksheet.txt" --shape "$samples/shed-mask.txt" --seed 18446744073709551615 --json
judged refusal 2 too-small make "$samples/tool-shed.txt" --grid 4x4 --json
printf 'Bed\nBed\n' >"$scratch/twice.txt"
judged refusal 2 twice make "$scratch/twice.txt" --json
printf 'Seedbed\nBed\n' >"$scratch/nested.txt"
judged refusal 2 nested make "$scratch/nested.txt" --json
judged audit 0 right check "$samples/herb-bed-grid.txt" --words "$samples/herb-bed.txt" --json
judged audit 1 stray check "$samples/herb-bed-grid-stray.txt" --words "$samples/herb-bed.txt" --json
judged audit 0 own check "$scratch/sign.json" --json

# A puzzle's recipe makes the same puzzle again.
/usr/bin/python3 -c 'import json, sys; json.dump(json.load(open(sys.argv[1]))["recipe"], open(sys.argv[2], "w"))' \
  "$scratch/heart.json" "$scratch/recipe.json"
/usr/bin/python3 "$here/schema_test.py" --kind recipe "$scratch/recipe.json"
judged puzzle 0 again make --recipe "$scratch/recipe.json" --json
cmp "$scratch/heart.json" "$scratch/again.json"
