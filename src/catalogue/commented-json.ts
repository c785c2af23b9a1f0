import type { Node, ParseError } from 'jsonc-parser';
import { findTooDeep, MAX_JSON_DEPTH } from './json-depth.ts';

/** What a JSON text with comments holds, and where in it each value stands. */
export type CommentedJson =
  | { readonly value: unknown; readonly lineOf: (path: readonly PropertyKey[]) => number }
  | { readonly fault: { readonly line: number; readonly expected: string } };

/**
 * Reads JSON with comments and commas at the end of lists, as editors know it; a byte order mark is passed over.
 * `lineOf` counts from 1; of a value that is not there it gives the line of what should hold it. At the first thing
 * that is no JSON, is nested too deeply, or a field that stands there twice, the line and what was expected there come back instead. Loads its parser only then.
 */
export async function parseCommentedJson(text: string): Promise<CommentedJson> {
  const { findNodeAtLocation, getNodeValue, parseTree, printParseErrorCode } = await import('jsonc-parser');
  const errors: ParseError[] = [];
  // A space in place of the byte order mark: places in the text stay what they are.
  const body = text.replace(/^\ufeff/, ' ');
  const tooDeep = findTooDeep(body);
  if (tooDeep !== null)
    return {
      fault: {
        line: lineAt(body, tooDeep),
        expected: `at most ${MAX_JSON_DEPTH} lists and objects within each other`,
      },
    };
  const root = parseTree(body, errors, { allowTrailingComma: true });
  const [error] = errors;
  if (error !== undefined || root === undefined) {
    const code = error ? printParseErrorCode(error.error) : 'ValueExpected';
    return { fault: { line: lineAt(body, error?.offset ?? body.length), expected: inWords(code) } };
  }
  const twice = findRepeatedField(root);
  if (twice) return { fault: { line: lineAt(body, twice.offset), expected: 'each field once' } };
  const lineOf = (path: readonly PropertyKey[]): number => {
    for (let length = path.length; length > 0; length -= 1) {
      const node = findNodeAtLocation(root, path.slice(0, length).map(toSegment));
      if (node) return lineAt(body, node.offset);
    }
    return lineAt(body, root.offset);
  };
  return { value: getNodeValue(root), lineOf };
}

/** The first name that its object has already: readers differ on which of the two counts. */
function findRepeatedField(node: Node): Node | undefined {
  const children = node.children ?? [];
  const seen = new Set<unknown>();
  for (const child of children) {
    const name = child.type === 'property' ? child.children?.[0] : undefined;
    if (name && seen.has(name.value)) return name;
    seen.add(name?.value);
    const below = findRepeatedField(child);
    if (below) return below;
  }
  return undefined;
}

const toSegment = (part: PropertyKey) => (typeof part === 'number' ? part : String(part));

function lineAt(text: string, offset: number): number {
  return text.slice(0, offset).split(/\r\n|\r|\n/).length;
}

/** `CommaExpected` as `comma`, `InvalidNumberFormat` as what else there may be. */
function inWords(code: string): string {
  const known: Readonly<Record<string, string>> = {
    PropertyNameExpected: 'the name of a field in double quotes',
    ValueExpected: 'a value',
    ColonExpected: 'a colon',
    CommaExpected: 'a comma',
    CloseBraceExpected: 'a closing }',
    CloseBracketExpected: 'a closing ]',
    EndOfFileExpected: 'nothing more after the record',
    InvalidNumberFormat: 'a number such as 3.4',
    UnexpectedEndOfComment: 'the end */ of the comment',
    UnexpectedEndOfString: 'the closing quote of the text',
    UnexpectedEndOfNumber: 'the digits of the number',
  };
  return known[code] ?? 'JSON: fields and texts in double quotes, numbers with a point';
}
