import { linuxShortcut } from './linux.ts';
import { macosShortcut } from './macos.ts';
import type { System } from './systems.ts';
import { windowsShortcut } from './windows.ts';

/** What happens to art that is dropped. */
export interface Dropped {
  /** Of its files, without an ending, such as `Blankcheck tile-ceramic-8in`. */
  readonly name: string;
  /** Absolute: a file manager has another search path than a shell. */
  readonly node: string;
  readonly program: string;
  /** The words behind the program, before what was dropped. */
  readonly words: readonly string[];
}

export interface ShortcutFile {
  readonly name: string;
  /** How every one of its kind begins. */
  readonly head: string;
  readonly text: string;
  readonly mode: number;
}

export interface Shortcut {
  readonly files: readonly ShortcutFile[];
  /** What is left to do, in words. */
  readonly next: string;
}

const SHORTCUTS: Readonly<Record<System, (dropped: Dropped) => Shortcut>> = {
  windows: windowsShortcut,
  macos: macosShortcut,
  linux: linuxShortcut,
};

/** Something to drop art on: its files as text, for the file manager of a system. */
export function makeShortcut(system: System, dropped: Dropped): Shortcut {
  return SHORTCUTS[system](dropped);
}

/** This machine's; Linux, whose file managers follow open standards, where it is none of the three. */
export function systemOf(platform: NodeJS.Platform): System {
  return platform === 'win32' ? 'windows' : platform === 'darwin' ? 'macos' : 'linux';
}
