#!/usr/bin/env bash
# Open the window; where there is no screen, say so in words instead of Qt's abort.
set -euo pipefail
cd "$(dirname "${BASH_SOURCE[0]}")/.."

no_screen() {
  cat >&2 <<'WORDS'

There is no screen here for the window to open on.
  At a computer with a desktop, type:  make run
  From another computer, with its screen:  ssh -X, then make run
  Without a window, the same work by command:  .venv/bin/swatchwright --help
WORDS
  exit 1
}

if [ "$(uname -s)" = Linux ] && [ -z "${DISPLAY:-}${WAYLAND_DISPLAY:-}${QT_QPA_PLATFORM:-}" ]; then
  no_screen
fi
code=0
.venv/bin/swatchwright "$@" || code=$?
# 134 is Qt giving up: a screen is named but does not answer.
[ "$code" -ne 134 ] || no_screen
exit "$code"
