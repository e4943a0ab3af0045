# Shared by the tests beside it, which read it with `source`: a world of its own for each, of network, processes, mounts and name.
# Whatever ends the test, the kernel ends every process in it, and takes its interfaces and files away: nothing is left behind.
# shellcheck shell=bash

skip() { echo "skipped: $*"; exit 77; }
fail() { echo "FAILED: $*" >&2; exit 1; }
step() { echo "== $*"; }

# needs PROGRAM...: what data/packages.txt lists under [machines].
needs() {
  local program
  for program in "$@"; do
    command -v "$program" >/dev/null || PATH=$PATH:/usr/sbin:/sbin command -v "$program" >/dev/null ||
      skip "no $program here: bash -c 'source data/setup.sh && install_packages machines' brings it"
  done
}

# enter ARGUMENT...: runs the script again, inside. There /run is empty, and all that the test writes is there.
enter() {
  local world=(unshare --net --mount --pid --uts --fork --kill-child --mount-proc)
  if [ "${LODE_WORLD:-}" != entered ]; then
    [ "$(id -u)" = 0 ] || skip "namespaces ask for root"
    "${world[@]}" bash -c 'mount -t tmpfs none /run && ip netns add probe && ip link set lo up' 2>/dev/null ||
      skip "this container allows no namespaces"
    LODE_WORLD=entered exec "${world[@]}" bash "$0" "$@"
  fi
  trap 'exit 130' INT TERM
  mount -t tmpfs -o mode=755 none /run
  PATH=$PATH:/usr/sbin:/sbin
}

# waits_for PROCESS COMMAND...: until the command succeeds; false if the process ends before.
waits_for() {
  local process=$1; shift
  until "$@"; do
    kill -0 "$process" 2>/dev/null || { "$@"; return; }
    sleep 0.02
  done
}

# orders COUNT: so many lines, some of which are no order that can be made.
orders() {
  local line
  for ((line = 1; line <= $1; ++line)); do
    case $line in
      7) echo ;;
      8) echo 'no order' ;;
      333) echo '{"words":["Thyme","Sage"],"grid":"2x2"}' ;;
      *) echo "{\"words\":[\"Thyme\",\"Sage\",\"Chervil\",\"Lovage\"],\"grid\":\"9x9\",\"seed\":$line}" ;;
    esac
  done
}
