/** The words of the Exec key: Desktop Entry Specification 1.5, "Basic format of the file" (escapes) and "The Exec key". */
export function readExecLine(entry: string): string[] {
  const raw = /^Exec=(.*)$/m.exec(entry)![1]!;
  const text = raw.replace(
    /\\([\\snrt])/g,
    (_, character: string) => ({ s: ' ', n: '\n', r: '\r', t: '\t' })[character] ?? character,
  );
  return [...text.matchAll(/"((?:[^"\\]|\\[\s\S])*)"|(\S+)/g)].map(([, quoted, plain]) =>
    quoted === undefined ? plain! : quoted.replace(/\\(["`$\\])/g, '$1').replaceAll('%%', '%'),
  );
}
