import { spawn } from 'node:child_process';
import { stripVTControlCharacters } from 'node:util';
import { quoteForSh } from '../../../cli/shortcut/quoting.ts';
import { buildCommand } from './built-command.ts';

export interface AtTerminal {
  readonly code: number | null;
  /** All that was shown, standard output and standard error alike, without its control sequences. */
  readonly shown: string;
}

/** What is typed once a text is shown that was not before. */
export type Turn = readonly [text: string, keys: string];

const LONGEST_MS = 30_000;

/** Runs the program at a terminal of its own, which `script` (util-linux) makes, and types by turns. */
export async function runAtTerminal(
  args: readonly string[],
  cwd: string,
  turns: readonly Turn[],
): Promise<AtTerminal> {
  // A terminal of `script` has no size until it gets one.
  const line = `stty cols 100 rows 30; exec ${[process.execPath, buildCommand(), ...args].map(quoteForSh).join(' ')}`;
  const { CI: _ci, NO_COLOR: _colour, ...env } = process.env;
  const child = spawn('script', ['--quiet', '--return', '--command', line, '/dev/null'], {
    cwd,
    env: { ...env, TERM: 'xterm', SHELL: '/bin/sh' },
  });
  let shown = '';
  let read = 0;
  const left = [...turns];
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    shown += text;
    const at = left[0] ? stripVTControlCharacters(shown).indexOf(left[0][0], read) : -1;
    if (at < 0) return;
    const [text_, keys] = left.shift()!;
    read = at + text_.length;
    child.stdin.write(keys);
  });
  const late = setTimeout(() => child.kill('SIGKILL'), LONGEST_MS);
  const code = await new Promise<number | null>((resolve, reject) => {
    child.on('error', reject);
    child.on('close', resolve);
  });
  clearTimeout(late);
  if (left.length > 0) throw new Error(`Never shown: ${left[0]![0]}\n${stripVTControlCharacters(shown)}`);
  return { code, shown: stripVTControlCharacters(shown) };
}
