/** One place of a pattern: any run of characters, or one character that fulfils the test. */
type Token = 'run' | ((character: string) => boolean);

/** Does the word hold what patterns are made of? */
export function looksLikeGlob(word: string): boolean {
  return /[*?[{]/.test(word);
}

/**
 * A test of one name by one part of a pattern: `*` for any characters, `?` for one, `[a-z]` and `[!a-z]` for one of some.
 * A name with a leading dot is matched by a dot only. An open bracket without its end stands for itself. Takes at most as
 * many steps as name and pattern are long, multiplied, whatever they hold.
 * @see POSIX.1-2017 2.13, pattern matching notation
 */
export function matchName(pattern: string): (name: string) => boolean {
  const tokens = tokensOf(pattern);
  return (name) => (!name.startsWith('.') || pattern.startsWith('.')) && matches([...name], tokens);
}

/** More is a slip of the pen, and each is looked for in turn (own choice). */
const MOST_PATTERNS = 1000;

/**
 * The patterns that `{a,b}` stands for, one inside another too; braces without a comma stand for themselves.
 * null where they are more than a thousand.
 */
export function expandBraces(pattern: string): readonly string[] | null {
  const done = new Set<string>();
  const open = [pattern];
  for (let one = open.pop(); one !== undefined; one = open.pop()) {
    const [, before, inner, after] = /^(.*?)\{([^{}]*,[^{}]*)\}(.*)$/s.exec(one) ?? [];
    if (inner === undefined) done.add(one);
    else for (const choice of inner.split(',').reverse()) open.push(`${before}${choice}${after}`);
    if (done.size + open.length > MOST_PATTERNS) return null;
  }
  return [...done];
}

function tokensOf(pattern: string): readonly Token[] {
  const tokens: Token[] = [];
  const characters = [...pattern];
  for (let at = 0; at < characters.length; at += 1) {
    const character = characters[at]!;
    const end = character === '[' ? characters.indexOf(']', at + (characters[at + 1] === '!' ? 3 : 2)) : -1;
    if (character === '*') tokens.push('run');
    else if (character === '?') tokens.push(() => true);
    else if (end > 0) {
      tokens.push(oneOf(characters.slice(at + 1, end)));
      at = end;
    } else tokens.push((other) => other === character);
  }
  return tokens;
}

function oneOf(set: readonly string[]): (character: string) => boolean {
  const not = set[0] === '!';
  const members = not ? set.slice(1) : set;
  return (character) => {
    const isIn = members.some(
      (member, index) =>
        member === character ||
        (member === '-' &&
          index > 0 &&
          index < members.length - 1 &&
          members[index - 1]! <= character &&
          character <= members[index + 1]!),
    );
    return isIn !== not;
  };
}

/** Goes back to the last run only: what an earlier one could take, the last one can too. */
function matches(name: readonly string[], tokens: readonly Token[]): boolean {
  let [at, token] = [0, 0];
  let back: { token: number; at: number } | null = null;
  while (at < name.length) {
    const next = tokens[token];
    if (next === 'run') {
      back = { token: token + 1, at };
      token += 1;
    } else if (next?.(name[at]!)) {
      at += 1;
      token += 1;
    } else if (back) {
      back = { token: back.token, at: back.at + 1 };
      at = back.at;
      token = back.token;
    } else return false;
  }
  return tokens.slice(token).every((rest) => rest === 'run');
}
