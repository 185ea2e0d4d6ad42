#!/usr/bin/env bash
# Write requirements.txt and requirements-dev.txt: one version of each package that suits Python
# 3.11 to 3.14 on Linux, Windows and macOS. Names and versions only, so that a pip set up for
# another registry takes them from there.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

pin() { # pin FILE PURPOSE OPTION...
  local file="$1" purpose="$2"
  shift 2
  printf '# %s Written by `make pins`; wanted ranges are in pyproject.toml.\n' "$purpose" >"$file.new"
  # One version for all Pythons: what is checked on one is then what runs on another.
  uv pip compile --quiet --universal --python-version 3.11 --fork-strategy fewest \
    --no-header --no-annotate --no-emit-index-url "$@" pyproject.toml >>"$file.new"
  mv "$file.new" "$file"
}

pin requirements.txt "What the program runs with." --extra cxf --extra heif --extra raw
pin requirements-dev.txt "What the program and its checks run with." --extra dev --extra cxf --extra heif --extra raw --constraint requirements.txt
