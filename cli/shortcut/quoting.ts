/** One word of a shell's command line, whatever is in it. @see POSIX.1-2017, Shell, 2.2.2 (single quotes) */
export function quoteForSh(word: string): string {
  return `'${word.replaceAll("'", "'\\''")}'`;
}

/**
 * One word of an Exec line: quoted, and its backslashes once more for strings in general.
 * @see Desktop Entry Specification 1.5, "The Exec key" and "Possible value types"
 */
export function quoteForExec(word: string): string {
  const quoted = word.replace(/["`$\\]/g, '\\$&').replaceAll('%', '%%');
  return `"${escapeForEntry(quoted)}"`;
}

/** A string as the value of a key in a desktop entry. */
export function escapeForEntry(text: string): string {
  return text
    .replaceAll('\\', '\\\\')
    .replaceAll('\n', '\\n')
    .replaceAll('\t', '\\t')
    .replaceAll('\r', '\\r');
}

/** A value within `set "name=value"` of a batch file: no path of Windows holds a quote, all else is plain there but %. */
export function escapeForSet(text: string): string {
  return text.replaceAll('%', '%%');
}
