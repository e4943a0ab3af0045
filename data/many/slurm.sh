#!/usr/bin/env bash
# slurm.sh ORDERS RESULTS [OPTION...]: `letterlode batch` on the nodes of a cluster, as an array job of Slurm.
#
#   data/many/slurm.sh orders.jsonl puzzles.jsonl --rate
#
# writes the bytes that `letterlode batch --rate <orders.jsonl` writes on one machine. Whatever ends it, the same call goes on from there.
# It waits for the job, in a folder that all nodes see; the program is there as well, or installed on each.
#   LINES_EACH   lines a task (50000); more, where that would be over 1000 tasks, Slurm's own bound for an array (MaxArraySize)
#   LETTERLODE   the program (letterlode)
#   What else the job needs (--partition, --account, --cpus-per-task) Slurm reads from SBATCH_... in the environment.
set -euo pipefail
[ $# -ge 2 ] || { sed -n '2,4s/^# \{0,1\}//p' "$0" >&2; exit 2; }
orders=$1 results=$2; shift 2
parts=$results.parts
mkdir -p "$parts"
count=$(wc -l <"$orders") lines_each=${LINES_EACH:-50000}
[ $((count / lines_each)) -lt 1000 ] || lines_each=$((count / 1000 + 1))
call="$(sha256sum <"$orders") $lines_each $*"
[ -e "$parts/call" ] || printf '%s\n' "$call" >"$parts/call"
[ "$(cat "$parts/call")" = "$call" ] ||
  { echo "slurm.sh: $parts was begun with other orders, options or LINES_EACH: move it away." >&2; exit 2; }

# Cut beforehand: a task that looked for its lines by itself would read all that stand before them.
split -l "$lines_each" -d -a 4 --additional-suffix=.jsonl "$orders" "$parts/orders-"
tasks=$(find "$parts" -name 'orders-*.jsonl' | wc -l)
[ "$tasks" -gt 0 ] || { : >"$results"; exit 0; }

# A task whose node fails is put into the queue again (--requeue), and goes on with the results that it has: --resume. So one that
# is already done takes only the time of reading them.
# --threads: as many as Slurm grants; the bytes are the same for any number.
# An exit code of 1 says that some orders were refused. That is an answer, and their lines tell it.
cat >"$parts/task" <<'TASK'
#!/usr/bin/env bash
parts=$1 lines_each=$2 program=$3; shift 3
part=$(printf %04d "$SLURM_ARRAY_TASK_ID")
"$program" batch --first $((SLURM_ARRAY_TASK_ID * lines_each + 1)) --threads "${SLURM_CPUS_ON_NODE:-1}" \
  --results "$parts/results-$part.jsonl" --resume "$@" <"$parts/orders-$part.jsonl"
[ $? -le 1 ]
TASK
sbatch --wait --requeue --job-name letterlode --array "0-$((tasks - 1))" --output "$parts/task-%a.log" --open-mode append \
  "$parts/task" "$parts" "$lines_each" "${LETTERLODE:-letterlode}" "$@" ||
  { echo "slurm.sh: some tasks failed ($parts/task-*.log say why). The same call goes on." >&2; exit 3; }

# Joined in the order of lines, and only where each order has its answer.
cat "$parts"/results-*.jsonl >"$parts/joined"
asked=$(grep -c '[^[:space:]]' "$orders" || true) answered=$(wc -l <"$parts/joined")
[ "$asked" = "$answered" ] || { echo "slurm.sh: $asked orders, but $answered results in $parts." >&2; exit 3; }
mv "$parts/joined" "$results"
