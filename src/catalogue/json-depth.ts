/**
 * Lists and objects within each other that a text of JSON may have: our own records have fewer than ten. Far below what
 * readers, which call themselves for each level, have stack for (own choice).
 */
export const MAX_JSON_DEPTH = 100;

/** Texts and comments, whose brackets are none, and brackets. A text that never ends reaches to the end of the line. */
const TOKENS = /"(?:[^"\\\n]|\\.)*"?|\/\/[^\n]*|\/\*[\s\S]*?(?:\*\/|$)|[[\]{}]/g;

/**
 * Where in a text of JSON, comments or none, the first bracket stands that is more than `MAX_JSON_DEPTH` levels deep; null
 * where none is. What else may be wrong with the text is not looked at. Calls nothing for each level.
 */
export function findTooDeep(text: string): number | null {
  let depth = 0;
  for (const { 0: token, index } of text.matchAll(TOKENS)) {
    if (token === '[' || token === '{') depth += 1;
    else if (token === ']' || token === '}') depth -= 1;
    if (depth > MAX_JSON_DEPTH) return index;
  }
  return null;
}
