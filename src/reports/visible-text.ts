/**
 * Characters that a terminal obeys or that hide or reorder what is read: control characters (ECMA-48 C0 and C1),
 * line and paragraph separators, lone surrogates, bidirectional controls (UAX #9; UTS #55 tells how they deceive) and
 * marks without width. The joiners that emoji and some scripts are spelt with stay.
 */
const HIDDEN = /[\p{Cc}\p{Zl}\p{Zp}\p{Cs}\p{Bidi_Control}\u00ad\u200b\u2060-\u2064\ufeff]/gu;

const SHORT: Readonly<Record<string, string>> = { '\n': '\\n', '\r': '\\r', '\t': '\\t' };

/**
 * The text with every such character written as an escape (`\n`, `\u001b`), as JSON and JavaScript spell it: what
 * came from a file name or from inside a file cannot move the cursor, colour the screen or pose as another name.
 */
export function showHidden(text: string): string {
  return text.replace(HIDDEN, (character) => SHORT[character] ?? escapeOf(character));
}

/** The same for a JSON text, which has escaped its strings already: its own line ends stay. */
export function escapeJsonText(json: string): string {
  return json.replace(HIDDEN, (character) => (character === '\n' ? character : escapeOf(character)));
}

function escapeOf(character: string): string {
  return `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;
}
