#!/usr/bin/env bash
# slurm_test.sh PROGRAM: data/many/slurm.sh on a cluster of one node, with every daemon of Slurm's and its keys under /run. A task
# is killed on the way, and the same call goes on. Joined, the results are those of one machine, byte for byte.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
source "$here/world.sh"
program=$(realpath "$1")
needs sbatch scontrol slurmctld slurmd munged mungekey ip
enter "$@"
mkdir -p /run/{munge,state,spool}
cd /run

step "a cluster of one node"
hostname plot
# Its name has an address, and one that is not the loopback: else the C library looks up none at all (AI_ADDRCONFIG).
ip link add eth0 type veth peer name eth1
ip addr add 198.18.3.1/30 dev eth0  # RFC 2544: for tests of networks
for link in lo eth0 eth1; do ip link set $link up; done
printf '127.0.0.1 localhost\n198.18.3.1 plot\n' >hosts
mount --bind hosts /etc/hosts
mungekey --create --keyfile /run/munge/key
# --force: the folders above belong to nobody but the test, and its rights are not looked at.
munged --foreground --force --key-file /run/munge/key --socket /run/munge/socket --pid-file /run/munge/pid --log-file /run/munge/log \
  --seed-file /run/munge/seed 2>munge/said &
munged=$!
waits_for $munged test -S munge/socket || { cat munge/said; fail "munged does not start"; }
cat >slurm.conf <<'END'
ClusterName=wrenbarrow
SlurmctldHost=plot
AuthType=auth/munge
AuthInfo=socket=/run/munge/socket
SlurmUser=root
SlurmdUser=root
StateSaveLocation=/run/state
SlurmdSpoolDir=/run/spool
SlurmctldPidFile=/run/slurmctld.pid
SlurmdPidFile=/run/slurmd.pid
SwitchType=switch/none
MpiDefault=none
MailProg=/bin/true
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
AccountingStorageType=accounting_storage/none
SelectType=select/cons_tres
SchedulerParameters=batch_sched_delay=0,sched_min_interval=0
ReturnToService=2
NodeName=plot CPUs=2 State=UNKNOWN
PartitionName=beds Nodes=plot Default=YES State=UP
END
export SLURM_CONF=/run/slurm.conf
slurmctld -D 2>slurmctld.log &
slurmctld=$!
slurmd -D -N plot 2>slurmd.log &
slurmd=$!
is_idle() { [ "$(sinfo -h -o %T 2>/dev/null)" = idle ]; }
ends_or_is_idle() { ! kill -0 $slurmctld 2>/dev/null || is_idle; }
waits_for $slurmd ends_or_is_idle && is_idle || { cat slurmctld.log slurmd.log; fail "the node does not come up"; }

orders 1000 >orders.jsonl
"$program" batch <orders.jsonl >alone.jsonl 2>/dev/null || [ $? = 1 ] || fail "one machine alone"
[ "$(wc -l <alone.jsonl)" = 999 ] || fail "orders of the test"
call() {  # call PROGRAM RESULTS [OPTION...]: the example
  local program=$1; shift
  LINES_EACH=${LINES:-150} LETTERLODE=$program bash "$here/../../data/many/slurm.sh" "${ORDERS:-orders.jsonl}" "$@" </dev/null
}
same() { cmp alone.jsonl "$1" || fail "$1 differs from the results of one machine"; }

step "an array of seven tasks"
call "$program" whole.jsonl >said 2>&1 || { cat said slurmctld.log slurmd.log; fail "the job fails"; }
same whole.jsonl
[ "$(find whole.jsonl.parts -name 'results-*' | wc -l)" = 7 ] || fail "not seven tasks"

step "with folders, which all tasks write into one"
head -n 40 orders.jsonl >few.jsonl
"$program" batch --out alone --rate <few.jsonl >few.alone 2>/dev/null || [ $? = 1 ] || fail "one machine alone"
LINES=20 ORDERS=few.jsonl call "$program" few.results --out folders --rate >said 2>&1 || { cat said; fail "the job fails"; }
cmp few.alone few.results
diff -r alone folders
[ "$(find folders -name worksheet.pdf | wc -l)" = 38 ] || fail "not every order has its folder"

step "a task is killed with half of a line written, and the same call goes on"
cat >torn <<END
#!/bin/bash
if [ "\$SLURM_ARRAY_TASK_ID" = 3 ]; then
  $(printf %q "$program") batch --first 451 2>/dev/null | head -c 5000 >torn.jsonl.parts/results-0003.jsonl
  kill -KILL \$PPID
  kill -KILL \$\$
fi
exec $(printf %q "$program") "\$@"
END
chmod +x torn
code=0; call /run/torn torn.jsonl >said 2>&1 || code=$?
[ $code = 3 ] || { cat said; fail "exit code $code though a task was killed"; }
[ ! -e torn.jsonl ] || fail "half of the results look like all"
call "$program" torn.jsonl >said 2>&1 || { cat said; fail "it does not go on"; }
grep -q torn torn.jsonl.parts/task-3.log || fail "no line was torn"
same torn.jsonl
sed -i 1d orders.jsonl
code=0; call "$program" torn.jsonl >said 2>&1 || code=$?
[ $code = 2 ] || { cat said; fail "other orders are mixed with what is there"; }
step "passed"
