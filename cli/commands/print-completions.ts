import { BlankcheckError } from '../../src/index.ts';
import { renderBash } from '../completions/bash.ts';
import { type CompletedCommand, readCommandTree } from '../completions/command-tree.ts';
import { renderFish } from '../completions/fish.ts';
import { renderPowershell } from '../completions/powershell.ts';
import { SHELLS, type Shell } from '../completions/shells.ts';
import { renderZsh } from '../completions/zsh.ts';
import type { Io } from '../io.ts';

const RENDERERS: Readonly<Record<Shell, (tree: readonly CompletedCommand[]) => string>> = {
  bash: renderBash,
  zsh: renderZsh,
  fish: renderFish,
  powershell: renderPowershell,
};

/** `completions`: the script by which a shell completes commands, options and blanks. @throws BlankcheckError of kind `usage`. */
export function printCompletions(words: readonly string[], { stdout }: Io): number {
  const shell = SHELLS.find((name) => words.length === 1 && name === words[0]?.toLowerCase());
  if (!shell)
    throw new BlankcheckError(
      'bad-option',
      `Expected one shell, received ${words.length === 0 ? 'none' : `"${words.join(' ')}"`}.\nName ${SHELLS.join(', ')}.`,
    );
  stdout.write(RENDERERS[shell](readCommandTree()));
  return 0;
}
