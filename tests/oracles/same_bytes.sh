#!/usr/bin/env bash
# same_bytes.sh PROGRAM PROGRAM...: several builds of the program do the same work, and every byte that they write must be the same.
# The first one's bytes are what the others are held to; files that differ are named.
set -euo pipefail
[ $# -ge 2 ] || { echo "usage: same_bytes.sh PROGRAM PROGRAM..." >&2; exit 2; }
samples=$(cd "$(dirname "$0")/../../data/samples" && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT

# work PROGRAM: writes into the current folder. All that is printed is kept as well, since it is promised too. The exit code is
# kept and not judged: `check` of the faulty grid has a finding.
work() {
  local program=$1
  run() { local name=$1; shift; local code=0; "$program" "$@" >"$name.out" 2>"$name.err" || code=$?; echo "$code" >"$name.code"; }
  local seed shape surface
  for seed in 1 2 18446744073709551615; do
    for surface in first second; do
      run "sign-$seed-$surface" make "$samples/tool-shed.txt" --seed $seed --blank 8x10in --surface $surface \
          --heading "Wrenbarrow Garden" --out "sign-$seed-$surface"
    done
  done
  for shape in rectangle ellipse heart diamond star "$samples/shed-mask.txt"; do
    run "shape-$(basename "$shape" .txt)" make "$samples/worksheet.txt" --shape "$shape" --directions all --locale en \
        --blank 203x254mm --surface first --out "shape-$(basename "$shape" .txt)"
  done
  run json make "$samples/worksheet.txt" --grid 14x16 --directions right,down,up-left --seed 7 --json
  run demands make "$samples/worksheet.txt" --directions all --shares equal --backward 8 --crossings at-least 2 --json
  run apart make "$samples/worksheet.txt" --spacing 1 --json
  run message make "$samples/worksheet.txt" --message "Well grown" --json
  run tight make "$samples/worksheet.txt" --grid tight --effort 3000000 --json
  run choices make "$samples/worksheet.txt" --choices 4 --threads 2 --out choices
  run from make "$samples/tool-shed.txt" --from sign-1-first/puzzle.json --keep filler --json
  run text make "$samples/tool-shed.txt" --grid auto --letters lower
  run refused make "$samples/tool-shed.txt" --grid 4x4 --json
  run right check "$samples/herb-bed-grid.txt" --words "$samples/herb-bed.txt" --json
  run stray check "$samples/herb-bed-grid-stray.txt" --words "$samples/herb-bed.txt" --json
  run drawn check "$samples/herb-bed-grid-stray.txt" --words "$samples/herb-bed.txt" --dictionary "$samples/tool-shed.txt" --threads 2
  run rated rate sign-1-first/puzzle.json --json
  run rated-on-a-wall rate sign-1-first/puzzle.json --blank 8x10in --viewing 2m --font "DejaVu Sans:bold" --json
  local aim way
  for aim in easier harder 520; do run "aim-$aim" make "$samples/worksheet.txt" --aim $aim --json; done
  for way in words language only-words easy-weeding; do
    run "filler-$way" make "$samples/worksheet.txt" --grid 25x25 --filler $way --longest-run 2 --look-alikes apart --json
  done
  run welsh make "$samples/worksheet.txt" --locale cy --json
  printf 'שלום\nגן\nפרחים\n' >hebrew.txt
  run hebrew make hebrew.txt --locale he
  run heart make "$samples/tool-shed.txt" --blank "heart 14x14in" --surface second --heading "Wrenbarrow\nGarden" --band brush \
      --colour bands=gold,seagreen,tomato --inlay all --border double --ornament leaf --registration --bed 12x12in \
      --film gold=12x12in --weeding-lines --dxf --guide --paper letter --foot 2031 --word-list --out heart
  run ring make "$samples/tool-shed.txt" --blank "oval 254x203mm" --surface first --heading "Beds" --band ring --font "DejaVu Serif" \
      --fix --border dotted --ornament curl --hole 127mm,12mm,5mm --bed 12in --speed 30mm --out ring
  run class print "$samples/worksheet.txt" --versions 4 --heading Beds --large-print --colours own --threads 2 --out class.pdf --json
  run booklet print "$samples/worksheet.txt" hebrew.txt --booklet "Our garden" --page letter --landscape --key lines --grid-lines full \
      --name-line --date-line --out booklet.pdf
  run solve print sign-1-first/puzzle.json --out solve.html
  run spoken print sign-1-first/puzzle.json --text
  run batch batch --from "$samples/orders.csv" --words-column names --rate --out batch --threads 2
  run cut cut sign-1-first/puzzle.json --blank 12x12in --surface second --out cut
}

digests() { (cd "$1" && find . -type f -print0 | LC_ALL=C sort -z | xargs -0 sha256sum); }

number=0
for program in "$@"; do
  program=$(realpath "$program")
  # Each works under the same path, since the program names it.
  mkdir "$scratch/work"
  (cd "$scratch/work" && work "$program")
  mv "$scratch/work" "$scratch/$number"
  digests "$scratch/$number" >"$scratch/$number.sums"
  number=$((number + 1))
done

# That the work was done at all: a run that fails everywhere alike would agree with itself.
for name in sign-1-first sign-2-second shape-heart json demands apart message tight choices from text right cut rated rated-on-a-wall aim-easier aim-harder aim-520 \
            filler-words filler-language filler-only-words filler-easy-weeding welsh hebrew \
            class booklet solve spoken; do
  [ "$(cat "$scratch/0/$name.code")" = 0 ] || { echo "$1 failed at $name:"; cat "$scratch/0/$name.err"; exit 1; }
done
for expected in refused=2 stray=1 drawn=1; do
  name=${expected%=*} code=${expected#*=}
  [ "$(cat "$scratch/0/$name.code")" = "$code" ] || { echo "$1 should have ended with $code at $name"; exit 1; }
done
if cmp -s "$scratch/0/sign-1-first/puzzle.txt" "$scratch/0/sign-2-first/puzzle.txt"; then
  echo "two seeds gave one puzzle"; exit 1
fi

status=0
for ((other = 1; other < number; other++)); do
  if differing=$(diff "$scratch/0.sums" "$scratch/$other.sums"); then continue; fi
  status=1
  program=${*:other + 1:1}
  echo "$program does not write what $1 writes:"
  sed -nE 's/^[<>] [0-9a-f]+ +/  /p' <<<"$differing" | sort -u
done
[ $status = 0 ] && echo "$number programs, $(wc -l <"$scratch/0.sums") files each: the same bytes"
exit $status
