#!/usr/bin/env bash
# parallel_test.sh PROGRAM: data/many/parallel.sh with two hosts, network namespaces that run an SSH server each. One is killed on the
# way, with its work; another time its plug is pulled; then the machine that calls is killed; then every host. Joined, the results are those of one machine, byte for byte.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
source "$here/world.sh"
program=$(realpath "$1")
needs parallel ip sshd ssh ssh-keygen
enter "$@"
parallel_sh=$here/../../data/many/parallel.sh
mkdir /run/{sshd,tmp,host,home}
export TMPDIR=/run/tmp PARALLEL_HOME=/run/home
cd /run

step "two hosts"
ssh-keygen -q -t ed25519 -N '' -f key
ssh-keygen -q -t ed25519 -N '' -f host_key
# A root without a password is locked on some machines, for every way in.
sed 's/^root:[^:]*/root:*/' /etc/shadow >shadow
chmod 600 shadow
mount --bind shadow /etc/shadow
cat >sshd_config <<'END'
HostKey /run/host_key
AuthorizedKeysFile /run/key.pub
PermitRootLogin prohibit-password
PasswordAuthentication no
UsePAM no
StrictModes no
PidFile none
END
ip netns add home
serve() {  # serve HOST: starts its SSH server, and waits until it listens
  local server
  : >"$1.log"
  # Each has a folder /run/host of its own; ip netns gives it mounts of its own.
  ip netns exec "$1" bash -c "mount --bind /run/$1 /run/host && exec $(type -P sshd) -D -e -f /run/sshd_config" 2>"$1.log" &
  server=$!
  disown $server  # its death is no news
  waits_for $server grep -q 'Server listening' "$1.log" || { cat "$1.log"; fail "the SSH server of $1 does not start"; }
}
number=0
for host in potting glasshouse; do
  number=$((number + 1))
  mkdir "$host"
  ip netns add "$host"
  ip link add "to$number" netns home type veth peer name eth0 netns "$host"
  ip -n home addr add "198.18.$number.1/30" dev "to$number"  # RFC 2544: for tests of networks
  ip -n "$host" addr add "198.18.$number.2/30" dev eth0
  ip -n home link set "to$number" up
  ip -n "$host" link set eth0 up
  printf 'Host %s\n  HostName 198.18.%d.2\n' "$host" $number >>ssh_config
  printf '198.18.%d.2 %s\n' $number "$(cut -d' ' -f1,2 host_key.pub)" >>known_hosts
  serve "$host"
done
printf 'Host *\n  User root\n  IdentityFile /run/key\n  IdentitiesOnly yes\n  UserKnownHostsFile /run/known_hosts\n  BatchMode yes\n  ConnectTimeout 2\n  ServerAliveInterval 1\n' >>ssh_config
# In the potting shed the program answers every job. In the glasshouse it answers one whole, and hangs in the midst of the next.
printf '#!/bin/bash\nexec %q "$@"\n' "$program" >potting/letterlode
cat >glasshouse/letterlode <<END
#!/bin/bash
echo job >>/run/host/jobs
[ "\$(wc -l </run/host/jobs)" -gt 1 ] || exec $(printf %q "$program") "\$@"
$(printf %q "$program") "\$@" | head -c 5000
: >/run/host/hangs
exec sleep infinity
END
chmod +x {potting,glasshouse}/letterlode

orders 1000 >orders.jsonl
"$program" batch <orders.jsonl >alone.jsonl 2>/dev/null || [ $? = 1 ] || fail "one machine alone"
[ "$(wc -l <alone.jsonl)" = 999 ] || fail "orders of the test"
grep -q '"letterlode-refusal"' alone.jsonl || fail "no order is refused"

call() {  # call RESULTS [OPTION...]: the example, from home
  local results=$1; shift
  ip netns exec home env PARALLEL_SSH="ssh -F /run/ssh_config" LETTERLODE=/run/host/letterlode LINES_EACH=50 \
    bash "$parallel_sh" "${ORDERS:-orders.jsonl}" "$results" potting,glasshouse "$@" </dev/null
}
# ends PLACE: every process there is killed, those too that begin meanwhile.
ends() {
  local processes
  while processes=$(ip netns pids "$1") && [ -n "$processes" ]; do
    kill -KILL $processes 2>/dev/null || true
    sleep 0.02
  done
}
same() { cmp alone.jsonl "$1" || fail "$1 differs from the results of one machine"; }
done_by() { awk -v host="$2" '$2 == host && $7 == 0' "$1.parts/log" | wc -l; }

# survives RESULTS COMMAND...: the command takes the glasshouse away in the midst of its second job, and the run goes on.
survives() {
  local results=$1 run; shift
  call "$results" >"$results.said" 2>&1 &
  run=$!
  waits_for $run test -e glasshouse/hangs || { cat "$results.said"; fail "the glasshouse was never at work"; }
  "$@"
  wait $run || { cat "$results.said"; fail "the run does not survive a host"; }
  same "$results"
  [ "$(done_by "$results" glasshouse) $(done_by "$results" potting)" = "1 19" ] || { cat "$results.parts/log"; fail "who did what"; }
}

step "a host is killed on the way"
survives killed.jsonl ends glasshouse

step "a host's plug is pulled: it says no word more"
rm glasshouse/{jobs,hangs}
serve glasshouse
survives silent.jsonl ip -n home link set to2 down
ip -n home link set to2 up
ends glasshouse

step "the machine that calls is killed, and goes on with the host that is left"
rm glasshouse/{jobs,hangs}
serve glasshouse
call stopped.jsonl >stopped.said 2>&1 &
run=$!
waits_for $run test -e glasshouse/hangs || { cat stopped.said; fail "the glasshouse was never at work"; }
ends home
wait $run 2>/dev/null && fail "it was not killed"
ends glasshouse
[ ! -e stopped.jsonl ] || fail "half of the results look like all"
answered() { awk 'NR > 1 && $7 == 0 { print $1 }' stopped.jsonl.parts/log | sort -n; }
kept=$(answered | wc -l)
printf '99\ttorn' >>stopped.jsonl.parts/log
call stopped.jsonl >stopped.said 2>&1 || { cat stopped.said; fail "it does not go on"; }
same stopped.jsonl
[ $kept -ge 1 ] || fail "nothing was kept"
[ "$(answered | xargs)" = "$(seq 20 | xargs)" ] || { cat stopped.jsonl.parts/log; fail "what was done was done again"; }

step "with folders, which come back"
rm glasshouse/{jobs,hangs}
ln -sf "$(realpath potting/letterlode)" glasshouse/letterlode
serve glasshouse
head -n 70 orders.jsonl >few.jsonl
"$program" batch --out alone --rate <few.jsonl >few.alone 2>/dev/null || [ $? = 1 ] || fail "one machine alone"
ORDERS=few.jsonl call few.results --out folders --rate >few.said 2>&1 || { cat few.said; fail "no folders come"; }
cmp few.alone few.results
diff -r alone folders
[ "$(find folders -name worksheet.pdf | wc -l)" = 68 ] || fail "not every order has its folder"
code=0; ORDERS=few.jsonl call few.results --out folders --rate >few.said 2>&1 || code=$?
[ $code = 2 ] || { cat few.said; fail "a folder that is there is written over"; }
ends glasshouse

step "no host is left; then one is back"
ends potting
code=0; call dead.jsonl >dead.said 2>&1 || code=$?
[ $code = 3 ] || { cat dead.said; fail "exit code $code without any host"; }
[ ! -e dead.jsonl ] || fail "results of nobody"
serve potting
call dead.jsonl >dead.said 2>&1 || { cat dead.said; fail "it does not go on"; }
same dead.jsonl
code=0; sed -i 1d orders.jsonl; call dead.jsonl >dead.said 2>&1 || code=$?
[ $code = 2 ] || { cat dead.said; fail "other orders are mixed with what is there"; }
step "passed"
