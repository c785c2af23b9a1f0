/** How Explorer starts a batch file with what was dropped on it: names with spaces are quoted, others are not. */
export function explorerLine(script: string, names: readonly string[]): string {
  const words = names.map((name) => (name.includes(' ') ? `"${name}"` : name)).join(' ');
  return `C:\\Windows\\system32\\cmd.exe /c ""${script}" ${words}"`;
}

/**
 * What the `set "art=..."` lines of a batch file make of the line that cmd was started with: `!name:*text=!` drops all up
 * to the first `text`, `!name:~0,-1!` the last character (from `set /?`, by memory). Never read again, so that nothing in it is special.
 */
export function readArtOf(batch: string, line: string): string {
  const variables: Record<string, string> = { cmdcmdline: line };
  for (const [, name, how] of batch.matchAll(/^set "art=!(\w+):(.*)!"\r$/gm)) {
    const text = variables[name!]!;
    const until = /^\*(.*)=$/.exec(how!)?.[1];
    if (until === undefined && how !== '~0,-1') throw new Error(`not understood: ${how}`);
    const at = until === undefined ? -1 : text.toLowerCase().indexOf(until);
    variables.art = until === undefined ? text.slice(0, -1) : at < 0 ? text : text.slice(at + until.length);
  }
  return variables.art!;
}

/** The words that a program sees; quotes hold spaces together. @see CommandLineToArgvW (for text without backslashes before quotes) */
export function splitWords(line: string): string[] {
  return [...line.matchAll(/"([^"]*)"|([^\s"]+)/g)].map(([, quoted, plain]) => quoted ?? plain!);
}
