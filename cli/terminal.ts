/** How text for people is set; decided once and passed down. */
export interface Terminal {
  readonly colour: boolean;
  readonly width: number;
}

const DEFAULT_WIDTH = 80;

/**
 * Colour by, in this order: `--no-colour`, FORCE_COLOR (0 and false forbid), NO_COLOR (any value but none, as
 * no-color.org has it), TERM=dumb, CI (a log, not a screen), and whether the stream is a terminal.
 */
export function describeTerminal(
  stream: { readonly isTTY: boolean; readonly columns?: number | undefined },
  env: Readonly<Record<string, string | undefined>>,
  options: { readonly colour?: boolean; readonly color?: boolean },
): Terminal {
  const forbidden = options.colour === false || options.color === false;
  return { colour: !forbidden && hasColour(stream.isTTY, env), width: stream.columns || DEFAULT_WIDTH };
}

function hasColour(isTTY: boolean, env: Readonly<Record<string, string | undefined>>): boolean {
  const { FORCE_COLOR: force, NO_COLOR: forbid, TERM: term, CI: ci } = env;
  if (force !== undefined) return force !== '0' && force !== 'false';
  if (forbid) return false;
  return isTTY && term !== 'dumb' && !isSet(ci);
}

/** Can lines that were written be drawn anew there? Not in a log of CI, and not on a dumb terminal. */
export function isScreen(
  stream: { readonly isTTY: boolean },
  { TERM: term, CI: ci }: Readonly<Record<string, string | undefined>>,
): boolean {
  return stream.isTTY && term !== 'dumb' && !isSet(ci);
}

function isSet(value: string | undefined): boolean {
  return value !== undefined && value !== '' && value !== '0' && value !== 'false';
}
