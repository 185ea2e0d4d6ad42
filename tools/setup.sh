#!/usr/bin/env bash
# Get this machine and this folder ready. A second run that finds all in place is quick and
# needs no rights; a run that was cut short is taken up where it stopped.
#
#   tools/setup.sh run      what the program needs
#   tools/setup.sh checks   that, and what the checks need
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

readonly what="${1:-run}"
readonly venv=.venv
PATH="$PATH:/usr/sbin:/sbin" # ldconfig lives there, and a plain user's path may leave it out

# What Qt opens on Linux, and the Debian and Ubuntu packages that hold it: first name known wins.
readonly libraries="
libGL.so.1              libgl1
libEGL.so.1             libegl1
libxkbcommon.so.0       libxkbcommon0
libglib-2.0.so.0        libglib2.0-0t64|libglib2.0-0
libfreetype.so.6        libfreetype6
libfontconfig.so.1      libfontconfig1
libdbus-1.so.3          libdbus-1-3
libxcb-cursor.so.0      libxcb-cursor0
libxcb-icccm.so.4       libxcb-icccm4
libxcb-image.so.0       libxcb-image0
libxcb-keysyms.so.1     libxcb-keysyms1
libxcb-render-util.so.0 libxcb-render-util0
libxcb-shape.so.0       libxcb-shape0
libxcb-xkb.so.1         libxcb-xkb1
libxkbcommon-x11.so.0   libxkbcommon-x11-0
"
# Programs that the end-to-end tests work with, and the packages that hold them.
readonly programs="
Xvfb                xvfb
xdotool             xdotool
dbus-daemon         dbus-daemon|dbus
at-spi-bus-launcher at-spi2-core
"
readonly program_folders="/usr/libexec /usr/lib/at-spi2-core"
readonly font_folders="/usr/share/fonts /usr/local/share/fonts"

say() { printf '%s\n' "$*"; }

# fail WHAT MEND...: say what is lacking, then what to type, and stop.
fail() {
  printf '\nSwatchwright is not ready: %s\n' "$1" >&2
  shift
  [ $# -eq 0 ] || printf '  %s\n' "$@" >&2
  exit 1
}

# --- the system ----------------------------------------------------------------------------------

suitable() {
  "$1" -c 'import sys; sys.exit(not (3, 11) <= sys.version_info[:2] <= (3, 14))' 2>/dev/null
}

find_python() {
  local name
  for name in "${PYTHON:-python3}" python3.13 python3.12 python3.14 python3.11; do
    if command -v "$name" >/dev/null && suitable "$name"; then
      command -v "$name"
      return
    fi
  done
}

missing_libraries() {
  [ "$(uname -s)" = Linux ] && command -v ldconfig >/dev/null || return 0
  local known file package
  known=$(ldconfig -p)
  while read -r file package; do
    [ -z "$file" ] || grep -qF "	$file " <<<"$known" || say "$file $package"
  done <<<"$libraries"
  # shellcheck disable=SC2086 # two folders, not one name
  [ -n "$(find $font_folders "$HOME/.fonts" "$HOME/.local/share/fonts" \
    -name '*.[to]tf' -print -quit 2>/dev/null)" ] || say "a-font fonts-dejavu-core"
}

missing_programs() {
  [ "$(uname -s)" = Linux ] || return 0
  local name package folder found
  while read -r name package; do
    [ -n "$name" ] || continue
    found=$(command -v "$name") || true
    for folder in $program_folders; do
      [ ! -x "$folder/$name" ] || found="$folder/$name"
    done
    [ -n "$found" ] || say "$name $package"
  done <<<"$programs"
}

# What the system lacks, one line each: the thing, then the package that brings it.
missing() {
  local python version
  python=$(find_python)
  if [ -z "$python" ]; then
    say "Python-3.11-to-3.14 python3"
  elif [ ! -x "$venv/bin/python" ] && ! "$python" -c 'import ensurepip, venv' 2>/dev/null; then
    version=$("$python" -c 'import sys; print("%d.%d" % sys.version_info[:2])')
    say "the-venv-module-of-Python-$version python$version-venv|python3-venv"
  fi
  missing_libraries
  [ "$what" != checks ] || missing_programs
}

as_root() {
  if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi
}

candidate() { apt-cache policy "$1" 2>/dev/null | sed -n 's/^  Candidate: //p' | grep -v '(none)'; }

# The package that brings a Python new enough, where plain python3 is too old (Ubuntu 22.04).
python_packages() {
  local version
  case "$(candidate python3)" in
    3.1[1-4].*) say python3 python3-venv && return ;;
  esac
  for version in 3.14 3.13 3.12 3.11; do
    if [ -n "$(candidate "python$version")" ]; then
      say "python$version python$version-venv"
      return
    fi
  done
  fail "it needs Python 3.11 to 3.14, and this system offers none." \
    "Install one (https://www.python.org/downloads/), then type:  make setup PYTHON=python3.13"
}

# Choose, of names with bars between them, the first that apt knows.
known_package() {
  local name
  for name in ${1//|/ }; do
    if [ -n "$(candidate "$name")" ]; then
      say "$name"
      return
    fi
  done
  say "${1##*|}"
}

install_with_apt() {
  local lacking="$1" file package packages=""
  [ "$(id -u)" = 0 ] || command -v sudo >/dev/null ||
    fail "it may not install system packages here: neither root nor sudo." \
      "Ask whoever looks after this machine for:" "$(sed 's/^/  /' <<<"$lacking")" \
      "then type:  make setup"
  say "Installing what the system lacks: $(cut -d' ' -f1 <<<"$lacking" | tr '\n' ' ')"
  as_root apt-get update -q || true # a broken third-party source must not stand in the way
  while read -r file package; do
    if [ "$package" = python3 ]; then
      packages="$packages $(python_packages)" || exit 1
    else
      packages="$packages $(known_package "$package")"
    fi
  done <<<"$lacking"
  # shellcheck disable=SC2086 # a list of names
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends \
    $packages ||
    fail "apt-get could not install what it needs (its own words are above)." \
      "Is this machine on the network? Then type:" \
      "  sudo apt-get update && sudo apt-get install -y$packages" "  make setup"
}

system_ready() {
  local lacking
  lacking=$(missing)
  [ -n "$lacking" ] || return 0
  command -v apt-get >/dev/null ||
    fail "this system lacks some things, and has no apt-get to install them with." \
      "Install these with its own package manager (left: what is missing; right: Debian's name):" \
      "$(sed 's/^/  /' <<<"$lacking")" "then type:  make setup"
  install_with_apt "$lacking"
  lacking=$(missing)
  [ -z "$lacking" ] || fail "these are still missing after apt-get:" "$lacking"
}

# --- the folder ----------------------------------------------------------------------------------

# Anything that changes what should be installed changes this line.
fingerprint() {
  local files="requirements.txt pyproject.toml tools/setup.sh"
  [ "$1" = run ] || files="$files requirements-dev.txt"
  # shellcheck disable=SC2086 # a list of names
  say "$PWD $("$venv/bin/python" --version) $(cat $files | cksum)"
}

ready() { [ "$(cat "$venv/ready-$1" 2>/dev/null)" = "$(fingerprint "$1")" ]; }

environment_works() {
  [ "$(cat "$venv/made-in" 2>/dev/null)" = "$PWD" ] && suitable "$venv/bin/python" &&
    "$venv/bin/python" -m pip --version >/dev/null 2>&1
}

make_environment() {
  local python
  python=$(find_python)
  say "Making $venv with $("$python" --version)"
  "$python" -m venv --clear "$venv" ||
    fail "Python could not make its folder $venv." "Is the disk full, or the folder not yours?" \
      "Then type:  make setup"
  say "$PWD" >"$venv/made-in"
}

pip_install() {
  local quiet=--quiet
  [ ! -t 1 ] || quiet=--progress-bar=on
  "$venv/bin/python" -m pip install --disable-pip-version-check --no-input "$quiet" "$@" ||
    fail "pip could not install the Python packages (its own words are above)." \
      "If it did not reach the network: connect, then type:  make setup" \
      "If it found 'no matching distribution' although it did reach the network: this system is" \
      "not one the packages are made for. They need 64 bits, and Debian 12 or Ubuntu 22.04 or" \
      "newer (on ARM: Debian 13 or Ubuntu 24.04), or macOS 14 or newer."
}

install_packages() {
  local list=requirements.txt
  [ "$what" = run ] || list=requirements-dev.txt
  say "Installing the Python packages of $list (some hundreds of megabytes the first time)"
  rm -f "$venv"/ready-*
  # Wheels only: compiling scipy or Qt here would take hours and then fail.
  pip_install --only-binary :all: --requirement "$list"
  pip_install --no-deps --editable .
  "$venv/bin/python" -c 'import PySide6.QtWidgets' ||
    fail "Qt was installed but does not start (the missing library is named above)." \
      "Install that library, then type:  make setup"
  fingerprint run >"$venv/ready-run"
  [ "$what" = run ] || fingerprint checks >"$venv/ready-checks"
}

case "$what" in
  run | checks) ;;
  *) fail "tools/setup.sh knows 'run' and 'checks', not '$what'." ;;
esac
system_ready
environment_works || make_environment
if ! ready "$what"; then
  install_packages
  say "Ready."
fi
