#!/usr/bin/env bash
# The set-up on machines that are not this one: apt-get, dpkg-query, sudo and id are played by small scripts, so that nothing is
# installed here and the test needs no rights.
set -uo pipefail
project=$(cd "$(dirname "$0")/../.." && pwd)
scratch=$(mktemp -d)
trap 'rm -rf "$scratch"' EXIT
failures=0
passed() { echo "ok: $1"; }
failed() { echo "FAILED: $1"; sed 's/^/    /' "$scratch"/{out,err,calls} 2>/dev/null; failures=$((failures + 1)); }
expect() { local name=$1; shift; if "$@"; then passed "$name"; else failed "$name"; fi; }

# machine NAME: a folder of commands. What a real Debian has in any case is linked in; the rest is put there by actor().
machine() {
  bin=$scratch/$1; mkdir "$bin"; : >"$scratch/calls"
  local tool
  for tool in bash env awk sed cat dirname flock true; do ln -s "$(type -P $tool)" "$bin/$tool"; done
}
actor() { printf '#!%s\n%s\n' "$(command -v bash)" "$2" >"$bin/$1"; chmod +x "$bin/$1"; }
# dpkg-query: installed are the names in the file "here".
dpkg_query() { actor dpkg-query "case \" \$(cat '$scratch/here' 2>/dev/null) \" in *\" \$4 \"*) printf installed ;; *) exit 1 ;; esac"; }
# apt-get: writes its call down, and what it installs is then here.
apt_get() {
  actor apt-get "echo \"frontend=\$DEBIAN_FRONTEND apt-get \$*\" >>'$scratch/calls'
    [[ \"\$*\" != *' install '* ]] || printf ' %s ' \"\${*##* install }\" >>'$scratch/here'"
}
user() { actor id "echo $1"; }
# set_up SECTION...: runs the set-up there, with no terminal.
set_up() {
  PATH=$bin bash -c "set -euo pipefail; source '$project/data/setup.sh'; install_packages $*" </dev/null \
    >"$scratch/out" 2>"$scratch/err"
  status=$?
}
one_clear_line() { [ "$status" = 3 ] && [ "$(wc -l <"$scratch/err")" = 1 ] && grep -q "$1" "$scratch/err"; }
calls() { [ "$(cat "$scratch/calls")" = "$1" ]; }
lock="-o DPkg::Lock::Timeout=600"

machine without-apt; dpkg_query; user 0
set_up build
expect "a machine without apt-get gets one clear line and exit code 3" one_clear_line "no apt-get"

machine without-rights; dpkg_query; apt_get; user 1000
set_up build
expect "neither root nor sudo: one clear line, exit code 3" one_clear_line "root or sudo.*cmake"
expect "and nothing was tried" calls ""

machine complete; dpkg_query; apt_get; user 1000
echo " cmake ninja-build g++ pkg-config " >"$scratch/here"
set_up build
expect "where all is here, neither rights nor apt-get are needed" test "$status" = 0
expect "and apt-get is not even asked for an update" calls ""

machine as-root; dpkg_query; apt_get; user 0
echo " cmake g++ " >"$scratch/here"
set_up build
expect "root: only what is missing is installed, without questions" calls "frontend=noninteractive apt-get $lock -q update
frontend=noninteractive apt-get $lock -q -y --no-install-recommends install ninja-build pkg-config"
expect "and that succeeds" test "$status" = 0
: >"$scratch/calls"; set_up build
expect "a second run has nothing to do" calls ""

# shellcheck disable=SC2016
machine with-sudo; dpkg_query; apt_get; user 1000; actor sudo '[ "$1" = -n ] || exit 9; shift; exec "$@"'
echo " g++ cmake ninja-build " >"$scratch/here"
set_up build
expect "sudo: the same, and no password is asked for without a terminal" calls "frontend=noninteractive apt-get $lock -q update
frontend=noninteractive apt-get $lock -q -y --no-install-recommends install pkg-config"

machine with-password; dpkg_query; apt_get; user 1000; actor sudo 'exit 1'
echo " g++ cmake ninja-build " >"$scratch/here"
set_up build
expect "sudo with a password, and no terminal: one clear line, exit code 3" one_clear_line "wants a password.*pkg-config"
expect "and nothing was tried with it" calls ""

machine broken; dpkg_query; user 0; actor apt-get 'echo "E: no network" >&2; exit 100'
echo >"$scratch/here"
set_up build
expect "a failing apt-get ends the set-up with exit code 3 and its own words" \
  bash -c "[ $status = 3 ] && grep -q 'E: no network' '$scratch/err' && grep -q 'apt-get update failed' '$scratch/err'"

machine liar; dpkg_query; user 0; actor apt-get 'exit 0'
set_up build
expect "packages that are still missing afterwards are named" one_clear_line "still not installed: cmake"

# This test holds the lock that one of two set-ups holds; the other says so, waits, and then finds nothing left to do.
machine second; dpkg_query; apt_get; user 0
echo >"$scratch/here"
exec 7</etc/os-release
flock 7
(exec 7<&-; set_up build; exit "$status") &
while kill -0 $! 2>/dev/null && ! grep -q "waiting for it" "$scratch/out"; do sleep 0.1; done
echo " cmake ninja-build g++ pkg-config " >"$scratch/here"
exec 7<&-
wait $!; status=$?
expect "of two set-ups at once the second waits" grep -q "waiting for it" "$scratch/out"
expect "and installs nothing a second time" test "$status:$(cat "$scratch/calls")" = "0:"

# What npm would fetch goes to a folder of the test's own.
machine with-npm; dpkg_query; apt_get; user 0; ln -s "$(type -P cmp)" "$(type -P cp)" "$(type -P mkdir)" "$bin"
mkdir "$scratch/wanted"; echo '{}' >"$scratch/wanted/package.json"; echo first >"$scratch/wanted/package-lock.json"
fetch() {
  mkdir -p "$scratch/fetched"
  PATH=$bin bash -c "set -euo pipefail; source '$project/data/setup.sh'; npm_packages '$scratch/wanted' '$scratch/fetched'" </dev/null \
    >"$scratch/out" 2>"$scratch/err"
  status=$?
}
fetch
expect "a machine without npm gets Debian's" test "$(tail -1 "$scratch/calls")" = \
  "frontend=noninteractive apt-get $lock -q -y --no-install-recommends install npm"
actor npm "echo npm >>'$scratch/calls'; exit 1"
fetch
expect "where npm cannot fetch, that is said" test "$status" != 0
actor npm "echo npm \$1 >>'$scratch/calls'; mkdir -p '$scratch/fetched/node_modules'"
actor node "exit 1"
fetch
expect "and where what it fetched does not load" test "$status" != 0
actor node "exit 0"
fetch
expect "packages of Node.js are fetched by their lock file, after a failure too" test "$status:$(tail -1 "$scratch/calls")" = "0:npm ci"
: >"$scratch/calls"; fetch
expect "and not a second time" test "$status:$(cat "$scratch/calls")" = "0:"
echo second >"$scratch/wanted/package-lock.json"; fetch
expect "but when the lock file is another" test "$status:$(cat "$scratch/calls")" = "0:npm ci"

machine sections; dpkg_query; apt_get; user 0
set_up no-such-section
expect "a section that the list lacks is an error" one_clear_line "no section no-such-section"

PATH=$PATH bash -c "source '$project/data/setup.sh'; packages build link run test npm bench peers machines" | LC_ALL=C sort >"$scratch/listed"
sed -E 's/#.*//; s/[[:space:]]//g; /^(\[.*\])?$/d' "$project/data/packages.txt" | LC_ALL=C sort >"$scratch/all"
expect "the eight sections are the whole list" cmp "$scratch/listed" "$scratch/all"
expect "no package is listed twice" test -z "$(uniq -d "$scratch/all")"

[ "$failures" = 0 ] || { echo "$failures failed"; exit 1; }
