#!/bin/sh
# A drop target for one blank: drag art on to it, and its print-ready file lies beside it in print-ready.
#
#   1. Set the blank: an id that `blankcheck blanks` lists, a size such as 200x150mm, or the full path of a
#      JSON file with one blank.
BLANK='tile-ceramic-8in'
#   2. Run this file once, without anything: sh blankcheck-drop.sh
#      It puts an icon on your desktop. If the desktop asks, allow the icon to be launched.
#   3. Drag files, folders or ZIP archives on to the icon.
#
# File managers that have a folder for scripts can take this file itself: it does what it is given.

set -eu

here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
script=$here/$(basename -- "$0")
program=$here/../../../dist/cli/bin.js

# Checks the files and writes their print-ready files; the window stays open until Return is pressed.
run() {
  if [ -f "$program" ]; then
    "${BLANKCHECK_NODE:-node}" "$program" prepare --pause --force --blank "$BLANK" -- "$@"
  else
    blankcheck prepare --pause --force --blank "$BLANK" -- "$@"
  fi
}

# One word of an Exec line: Desktop Entry Specification, "The Exec key", and its escapes for strings on top.
exec_word() {
  printf '"%s"' "$(printf '%s' "$1" | sed 's/\\/\\\\\\\\/g; s/["`$]/\\\\&/g; s/%/%%/g')"
}

make_icon() {
  desktop=$(xdg-user-dir DESKTOP 2>/dev/null || printf '%s' "$HOME/Desktop")
  mkdir -p -- "$desktop"
  icon="$desktop/Blankcheck $(printf '%s' "$BLANK" | tr '/:' '__').desktop"
  # The desktop may not know where node is; this shell does.
  node=$(command -v node || printf node)
  cat >"$icon" <<ENTRY
[Desktop Entry]
Type=Application
Name=Blankcheck $BLANK
Comment=Drag art on to this icon to get its print-ready file
Exec=env $(exec_word "BLANKCHECK_NODE=$node") sh $(exec_word "$script") --dropped %F
Terminal=true
MimeType=image/png;image/jpeg;image/webp;image/tiff;image/avif;image/gif;image/svg+xml;application/zip;inode/directory;
ENTRY
  chmod +x "$icon"
  printf 'The drop target is %s\nDrag art for %s on to it.\n' "$icon" "$BLANK"
}

if [ "$#" -eq 0 ]; then
  make_icon
else
  if [ "$1" = --dropped ]; then shift; fi
  run "$@"
fi
