#!/bin/sh
# A drop target for one blank: drag art on to it, and its print-ready file lies beside it in print-ready.
#
#   1. Set the blank: an id that `blankcheck blanks` lists, a size such as 200x150mm, or the full path of a
#      JSON file with one blank.
BLANK='tile-ceramic-8in'
#   2. Double-click this file once. It puts an icon on your desktop. If it does not open, allow it first:
#      in Terminal, chmod +x and a space, drag the file behind it, press Return; and if the file was downloaded,
#      allow it in System Settings, Privacy & Security.
#   3. Drag files, folders or ZIP archives on to the icon. The first time it asks whether it may use Terminal.

set -eu

here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
script=$here/$(basename -- "$0")
program=$here/../../../dist/cli/bin.js

# Checks the files and writes their print-ready files; the window stays open until Return is pressed.
run() {
  if [ -f "$program" ]; then
    node "$program" prepare --pause --force --blank "$BLANK" -- "$@"
  else
    blankcheck prepare --pause --force --blank "$BLANK" -- "$@"
  fi
}

# What was dropped comes in a file, a path a line: a typed line would be cut after 1024 bytes.
run_list() {
  list=$1
  set --
  while IFS= read -r path || [ -n "$path" ]; do set -- "$@" "$path"; done <"$list"
  rm -f -- "$list"
  run "$@"
}

applescript_text() {
  printf '"%s"' "$(printf '%s' "$1" | sed 's/["\\]/\\&/g')"
}

make_icon() {
  icon="$HOME/Desktop/Blankcheck $(printf '%s' "$BLANK" | tr '/:' '__').app"
  osacompile -o "$icon" <<ENTRY
on open theItems
  set thePaths to ""
  repeat with theItem in theItems
    set thePaths to thePaths & POSIX path of theItem & linefeed
  end repeat
  set theList to do shell script "list=\$(mktemp -t blankcheck) && printf %s " & quoted form of thePaths & " >\"\$list\" && printf %s \"\$list\"" without altering line endings
  tell application "Terminal"
    activate
    do script "sh " & quoted form of $(applescript_text "$script") & " --list " & quoted form of theList
  end tell
end open

on run
  display dialog "Drag art on to this icon." buttons {"OK"} default button 1
end run
ENTRY
  printf 'The drop target is %s\nDrag art for %s on to it.\n' "$icon" "$BLANK"
}

if [ "$#" -eq 0 ]; then
  make_icon
elif [ "$1" = --list ]; then
  run_list "$2"
else
  run "$@"
fi
