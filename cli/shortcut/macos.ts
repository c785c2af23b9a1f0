import { quoteForSh } from './quoting.ts';
import { SH_HEAD, shRun } from './sh-script.ts';
import type { Dropped, Shortcut } from './shortcut.ts';

/**
 * A command file that makes the icon once it is opened: what takes dropped files on macOS is an application, and the
 * system's own compiler of scripts makes one.
 */
export function macosShortcut(dropped: Dropped): Shortcut {
  const { name } = dropped;
  const text = `${SH_HEAD}# Open it once: it makes the icon "${name}" beside it, to drop pictures on.
${shRun(dropped)}
name=${quoteForSh(name)}
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
script=$here/$(basename -- "$0")

# What was dropped comes in a file, as words of a shell: a typed line would be cut after 1024 bytes.
run_list() {
  words=$(cat -- "$1")
  rm -f -- "$1"
  eval "set -- $words"
  run "$@"
}

applescript_text() {
  printf '"%s"' "$(printf '%s' "$1" | sed 's/["\\\\]/\\\\&/g')"
}

make_icon() {
  osacompile -o "$here/$name.app" <<ENTRY
on open theItems
  set theWords to ""
  repeat with theItem in theItems
    set theWords to theWords & quoted form of POSIX path of theItem & " "
  end repeat
  set theList to do shell script "list=\\$(mktemp -t blankcheck) && printf %s " & quoted form of theWords & " >\\"\\$list\\" && printf %s \\"\\$list\\"" without altering line endings
  tell application "Terminal"
    activate
    do script "sh " & quoted form of $(applescript_text "$script") & " --list " & quoted form of theList
  end tell
end open

on run
  display dialog "Drop pictures, folders or ZIP archives on this icon." buttons {"OK"} default button 1
end run
ENTRY
  printf '%s\\n' "Drop pictures on the icon \\"$name\\", which lies beside this file."
}

if [ "$#" -eq 0 ]; then
  make_icon
elif [ "$1" = --list ]; then
  run_list "$2"
else
  run "$@"
fi
`;
  return {
    files: [{ name: `${name}.command`, head: SH_HEAD, text, mode: 0o755 }],
    next: `Open "${name}.command" once: it makes an icon beside it to drop pictures on, and the first time that asks whether it may use the terminal. The icon needs the file, so leave both where they are.`,
  };
}
