#!/bin/sh
# Opens the window by a double click (macOS; the terminal that opens along shows the first build).
exec "$(dirname -- "$0")/toothmark" desk "$@"
