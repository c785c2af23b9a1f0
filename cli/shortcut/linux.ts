import { escapeForEntry, quoteForExec } from './quoting.ts';
import { SH_HEAD, shRun } from './sh-script.ts';
import type { Dropped, Shortcut } from './shortcut.ts';

const MIME_TYPES = [
  'image/png',
  'image/jpeg',
  'image/webp',
  'image/tiff',
  'image/avif',
  'image/gif',
  'image/svg+xml',
  'application/zip',
  'inode/directory',
];
const ENTRY_HEAD = '[Desktop Entry]\n# Made by blankcheck shortcut\n';

/**
 * A script, and an icon that starts the program itself, so that either may be moved alone.
 * @see Desktop Entry Specification 1.5
 */
export function linuxShortcut(dropped: Dropped): Shortcut {
  const { name, node, program, words } = dropped;
  const script = `${SH_HEAD}# Does what the icon beside it does, where a file manager takes scripts.
${shRun(dropped)}
if [ "$#" -eq 0 ]; then
  printf '%s\\n' 'Drop pictures, folders or ZIP archives on it.' 'Press Return to close.'
  read -r _ || :
  exit 0
fi
run "$@"
`;
  const exec = [node, program, ...words, '--'].map(quoteForExec).join(' ');
  const entry = `${ENTRY_HEAD}Type=Application
Name=${escapeForEntry(name)}
Comment=Drop pictures, folders or ZIP archives here to get their print-ready files
Exec=${exec} %F
TryExec=${escapeForEntry(node)}
Terminal=true
MimeType=${MIME_TYPES.map((type) => `${type};`).join('')}
Categories=Graphics;
`;
  return {
    files: [
      { name: `${name}.desktop`, head: ENTRY_HEAD, text: entry, mode: 0o755 },
      { name: `${name}.sh`, head: SH_HEAD, text: script, mode: 0o755 },
    ],
    next: `Drop pictures, folders or ZIP archives on the icon "${name}". The first time the desktop may ask: right-click it and allow launching.`,
  };
}
