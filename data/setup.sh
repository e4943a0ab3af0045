# Set-up shared by `bash cli/try` and `bash tests/run`; they read it with `source`. It installs what is missing and builds.
# Every step says in a line what it does. Two runs at once wait for each other.
# shellcheck shell=bash

project=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)

say() { printf '== %s\n' "$*"; }
stop() { printf 'letterlode set-up: %s\n' "$*" >&2; exit 3; }

# packages SECTION...: the names that data/packages.txt lists there.
packages() {
  awk -v wanted=" $* " '
    { sub(/#.*/, ""); gsub(/[ \t\r]/, "") }
    /^\[.*\]$/ { section = substr($0, 2, length($0) - 2); next }
    $0 != "" && index(wanted, " " section " ") { print }' "$project/data/packages.txt"
}

# missing NAME...: those that are not installed here.
missing() {
  local name
  for name in "$@"; do
    [ "$(dpkg-query -W -f '${db:Status-Status}' "$name" 2>/dev/null)" = installed ] || printf '%s\n' "$name"
  done
}

# as_root COMMAND...: runs it with the right to install. sudo may ask for a password only where somebody sits at a terminal.
as_root() {
  if [ "$(id -u)" = 0 ]; then
    env DEBIAN_FRONTEND=noninteractive "$@"
  elif ! command -v sudo >/dev/null; then
    stop "packages must be installed, and that needs root or sudo: run this as root, or install these by hand: ${lacking[*]}"
  elif [ -t 0 ]; then
    sudo env DEBIAN_FRONTEND=noninteractive "$@"
  else
    sudo -n true 2>/dev/null ||
      stop "packages must be installed, and sudo wants a password that nobody is here to type: install these first: ${lacking[*]}"
    sudo -n env DEBIAN_FRONTEND=noninteractive "$@"
  fi
}

# install_packages SECTION...: what these sections list and this machine lacks.
install_packages() {
  local wanted lacking
  mapfile -t wanted < <(packages "$@")
  [ ${#wanted[@]} -gt 0 ] || stop "data/packages.txt has no section $*"
  local tool
  for tool in apt-get dpkg-query; do
    command -v $tool >/dev/null ||
      stop "this machine has no $tool: the set-up is written for Debian 12; elsewhere install what data/packages.txt lists"
  done
  # The lock is on a file that every Debian machine has and every user may read: one installs at a time, whatever the folder.
  exec 9</etc/os-release
  flock -n 9 || { say "another set-up is installing packages; waiting for it"; flock 9; }
  mapfile -t lacking < <(missing "${wanted[@]}")
  if [ ${#lacking[@]} -eq 0 ]; then
    say "all ${#wanted[@]} packages are here ($*)"
  else
    say "installing ${#lacking[@]} of ${#wanted[@]} packages: ${lacking[*]}"
    local waits=(-o DPkg::Lock::Timeout=600)
    as_root apt-get "${waits[@]}" -q update || stop "apt-get update failed; its own words stand above"
    as_root apt-get "${waits[@]}" -q -y --no-install-recommends install "${lacking[@]}" ||
      stop "apt-get could not install the packages; its own words stand above"
    mapfile -t lacking < <(missing "${wanted[@]}")
    [ ${#lacking[@]} -eq 0 ] || stop "still not installed: ${lacking[*]}"
  fi
  exec 9<&-
}

# fetch_node_packages: what the script of Node.js in tests/consumers asks for, into build/node, unless it is there. npm compares each
# package with its checksum in the lock file, which names all of them; no script of theirs is run.
fetch_node_packages() { in_folder "$project/build/node" npm_packages "$project/tests/consumers/node" "$project/build/node"; }
npm_packages() {
  local asked=$1 folder=$2
  if cmp -s "$asked/package-lock.json" "$folder/node_modules/fetched-by"; then say "the packages of Node.js are here"; return; fi
  command -v npm >/dev/null || install_packages npm
  say "fetching the packages that ${asked#"$project"/}/package-lock.json lists"
  cp "$asked"/package{,-lock}.json "$folder"
  # npm leaves out in silence what did not come of the packages for one kind of machine each; hence the look whether all load.
  npm ci --prefix "$folder" --ignore-scripts --no-audit --no-fund --no-update-notifier </dev/null &&
    (cd "$folder" && node -e 'Object.keys(require("./package.json").dependencies).forEach((name) => require(name))') &&
    cp "$asked/package-lock.json" "$folder/node_modules/fetched-by"
}

# How many compilers may run at once: one a core, each with 1.5 GB of the memory that is free, and at least one.
jobs_here() {
  local cores room
  cores=$(nproc)
  room=$(awk '/^MemAvailable:/ { print int($2 / 1500000) }' /proc/meminfo)
  [ "${room:-1}" -ge 1 ] || room=1
  echo $((cores < room ? cores : room))
}

# in_folder FOLDER COMMAND...: no two runs work in the same build folder at once.
in_folder() {
  local folder=$1; shift
  mkdir -p "$folder"
  (
    exec 8<"$folder"
    flock -n 8 || { say "another run works in $folder; waiting for it"; flock 8; }
    "$@"
  )
}

# build FOLDER "TARGET..." CMAKE-OPTION...: configures build/FOLDER and builds the targets ("" for all).
build() {
  local folder=$project/build/$1 targets=$2; shift 2
  # Not needed, and used where it is: CMake reads these, in tests that build as well.
  if command -v ccache >/dev/null; then
    export CMAKE_CXX_COMPILER_LAUNCHER=ccache CMAKE_C_COMPILER_LAUNCHER=ccache
    export CCACHE_SLOPPINESS=pch_defines,time_macros  # else it keeps nothing that uses a precompiled header
  fi
  say "building ${targets:-everything} in ${folder#"$project"/} with $(jobs_here) jobs"
  in_folder "$folder" configure_and_build "$folder" "$targets" "$@"
}
configure_and_build() {
  local folder=$1 targets=$2; shift 2
  cmake -G Ninja -S "$project" -B "$folder" "$@" >"$folder/configure.log" 2>&1 ||
    { cat "$folder/configure.log" >&2; stop "cmake could not configure $folder"; }
  # shellcheck disable=SC2086
  NINJA_STATUS="[%f of %t] " ninja -C "$folder" -j "$(jobs_here)" $targets ||
    stop "the build in $folder failed; the compiler's words stand above"
}
