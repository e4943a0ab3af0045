#!/usr/bin/env bash
# parallel.sh ORDERS RESULTS HOST[,HOST...] [OPTION...]: `letterlode batch` on many machines, by GNU parallel over SSH.
#
#   data/many/parallel.sh orders.jsonl puzzles.jsonl potting,glasshouse --rate
#
# writes the bytes that `letterlode batch --rate <orders.jsonl` writes on one machine. Whatever ends it, the same call goes on from there.
# With --out DIR the folders come back too, and DIR is as one machine would have written it.
# Each host needs letterlode and perl, and takes an SSH key of yours without a question. A file that an order names ("words":
# "herbs.txt") must be in the home folder on each host.
#   LINES_EACH   lines a job (50000). A job costs an SSH connection, about a third of a second; let its work take some seconds.
#   LETTERLODE   the program on the hosts (letterlode)
#   PARALLEL_SSH how a host is reached (GNU parallel's own variable; "ssh -o ConnectTimeout=10 -o ServerAliveInterval=10" if unset:
#                a host whose plug is pulled says no word, and ssh would wait for it for hours)
set -euo pipefail
[ $# -ge 3 ] || { sed -n '2,4s/^# \{0,1\}//p' "$0" >&2; exit 2; }
orders=$1 results=$2 hosts=$3; shift 3
lines_each=${LINES_EACH:-50000}
export PARALLEL_SSH=${PARALLEL_SSH:-ssh -o ConnectTimeout=10 -o ServerAliveInterval=10}
parts=$results.parts

# --out names a folder here. On a host each job writes into one of its own, which it sends back with its results.
options=() folder=
while [ $# -gt 0 ]; do
  case $1 in
    --out) folder=${2:?--out wants a folder}; shift ;;
    --out=*) folder=${1#*=} ;;
    *) options+=("$1") ;;
  esac
  shift
done
[ ! -e "$folder" ] || { echo "parallel.sh: $folder exists already: give --out another name." >&2; exit 2; }
mkdir -p "$parts"

# GNU parallel goes on by the numbers of its jobs alone. Other orders, or jobs of another size, would be mixed with the old ones.
call="$(sha256sum <"$orders") $lines_each ${folder:+folders }${options[*]}"
[ -e "$parts/call" ] || printf '%s\n' "$call" >"$parts/call"
[ "$(cat "$parts/call")" = "$call" ] ||
  { echo "parallel.sh: $parts was begun with other orders, options or LINES_EACH: move it away." >&2; exit 2; }
# A log whose last line was torn, as by a power cut, is refused by GNU parallel. That job is done again.
if [ -s "$parts/log" ] && [ -n "$(tail -c 1 "$parts/log")" ]; then sed -i '$d' "$parts/log"; fi

# --pipe -N      a job's standard input is so many lines; job {#} begins with line ({#} - 1) * N + 1, which --first is told.
#                (Blocks by bytes, --block, would leave nobody knowing that number.)
# --results      a job's output has a file of its own. With --keep-order and one stream, what a job had written and nobody printed
#                yet would be lost if this machine stopped, and its line in the log would say that it is done.
# --retries      a job that fails is done again by a host that has not failed it: for each host once, and once more.
# --resume-failed  goes on: jobs that the log does not have, and those that it has as failed. --resume would leave those out.
# --jobs 1       the program uses every processor of its host by itself.
# An exit code of 1 says that some orders were refused. That is an answer, and their lines tell it.
batch="${LETTERLODE:-letterlode} batch --first \$((({#} - 1) * $lines_each + 1)) $([ ${#options[@]} -eq 0 ] || printf '%q ' "${options[@]}")"
job="$batch; [ \$? -le 1 ]"
[ -z "$folder" ] || job="made=\$(mktemp -d) && trap 'rm -rf \"\$made\"' EXIT && { $batch --out \"\$made/folders\" >\"\$made/results\"; [ \$? -le 1 ]; } &&
  tar -C \"\$made\" -c results folders"
only_hosts=${hosts//[^,]/}
parallel --pipe -N "$lines_each" --jobs 1 --sshlogin "$hosts" --retries $((${#only_hosts} + 2)) \
  --joblog "$parts/log" --resume-failed --results "$parts/{#}" "$job" <"$orders" >/dev/null ||
  { echo "parallel.sh: some jobs failed ($parts/log says which, $parts/*.err why). The same call goes on." >&2; exit 3; }

# Joined in the order of lines, and only where each order has its answer.
jobs=$((($(wc -l <"$orders") + lines_each) / lines_each))
for ((job = 1; job <= jobs; ++job)); do
  if [ -e "$parts/$job" ] && [ -z "$folder" ]; then cat "$parts/$job"; fi
  if [ -e "$parts/$job" ] && [ -n "$folder" ]; then
    tar -xf "$parts/$job" -C "$parts"
    cat "$parts/results"
  fi
done >"$parts/joined"
asked=$(grep -c '[^[:space:]]' "$orders" || true) answered=$(wc -l <"$parts/joined")
[ "$asked" = "$answered" ] || { echo "parallel.sh: $asked orders, but $answered results in $parts." >&2; exit 3; }
if [ -n "$folder" ]; then mv "$parts/folders" "$folder"; fi
mv "$parts/joined" "$results"
