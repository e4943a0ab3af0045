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
judged puzzle 0 filled make "$samples/worksheet.txt" --filler-text "$samples/tool-shed.txt" --longest-run 2 --look-alikes apart \
  --message Grow --message-then filler --json
judged refusal 1 unfilled make "$samples/worksheet.txt" --grid 30x30 --message Grow --json
judged refusal 2 too-small make "$samples/tool-shed.txt" --grid 4x4 --json
printf 'Bed\nBed\n' >"$scratch/twice.txt"
judged refusal 2 twice make "$scratch/twice.txt" --json
printf 'Seedbed\nBed\nDeb\n' >"$scratch/nested.txt"
judged puzzle 0 inside make "$scratch/nested.txt" --json
judged puzzle 0 separate make "$scratch/nested.txt" --nested separate --json
judged audit 0 separate-again check "$scratch/separate.json" --json
printf 'Anna\nAnn\n' >"$scratch/anna.txt"
judged refusal 2 anna make "$scratch/anna.txt" --json
judged choices 0 choices make "$samples/worksheet.txt" --choices 3 --threads 2 --json
judged puzzle 0 demands make "$samples/worksheet.txt" --directions all --shares equal --backward 8 --crossings at-least 2 \
    --pin Rake@1,1,right --json
judged puzzle 0 message make "$samples/worksheet.txt" --message "Well grown" --json
judged refusal 1 leftover make "$samples/worksheet.txt" --grid 20x20 --leftover 3 --json
judged puzzle 0 from make "$samples/worksheet.txt" --from "$scratch/demands.json" --keep filler --json
judged audit 0 right check "$samples/herb-bed-grid.txt" --words "$samples/herb-bed.txt" --json
judged audit 1 stray check "$samples/herb-bed-grid-stray.txt" --words "$samples/herb-bed.txt" --json
judged audit 0 own check "$scratch/sign.json" --json
judged audit 0 chance check "$scratch/sign.json" --dictionary /usr/share/dict/american-english --json
judged rating 0 rated rate "$scratch/sign.json" --json
judged rating 0 rated-on-a-wall rate "$scratch/sign.json" --blank 8x10in --viewing 2m --json
judged rating 0 rated-drawn rate "$samples/herb-bed-grid.txt" --words "$samples/worksheet.txt" --json
judged puzzle 0 aimed make "$samples/worksheet.txt" --aim harder --json
judged puzzle 0 welsh make "$samples/worksheet.txt" --locale cy --digraphs split --marks strip --finals fold --sharp-s keep --json
judged refusal 2 rated-nowhere rate "$scratch/sign.json" --viewing 2m --json
judged print 0 printed print "$samples/worksheet.txt" --versions 3 --heading Beds --out "$scratch/printed.pdf" --json
judged print 1 printed-large print "$samples/worksheet.txt" --grid 30x30 --large-print --out "$scratch/large.pdf" --json
judged refusal 2 printed-nowhere print "$samples/worksheet.txt" --json
judged cut 0 cut cut "$scratch/sign.json" --blank 8x10in --surface second --heading Wrenbarrow --out "$scratch/cut" \
    --bed 6x12in --film '#243f3a=12in' --speed 30mm --json
judged cut 1 cut-thin cut "$scratch/sign.json" --blank 3x4in --surface first --font 'DejaVu Sans' --foot 'Spring 2031' \
    --least-stroke 1.5mm --out "$scratch/cut-thin" --json
judged refusal 2 printed-too-large print "$samples/worksheet.txt" --grid 90x90 --out "$scratch/too-large.pdf" --json

# A puzzle's recipe makes the same puzzle again.
/usr/bin/python3 -c 'import json, sys; json.dump(json.load(open(sys.argv[1]))["recipe"], open(sys.argv[2], "w"))' \
  "$scratch/heart.json" "$scratch/recipe.json"
/usr/bin/python3 "$here/schema_test.py" --kind recipe "$scratch/recipe.json"
judged puzzle 0 again make --recipe "$scratch/recipe.json" --json
cmp "$scratch/heart.json" "$scratch/again.json"
