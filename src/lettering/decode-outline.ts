import type { Path, PathCommand } from '../geometry/path.ts';

/** Points that each letter takes. */
const POINTS: Readonly<Record<string, number>> = { m: 1, l: 1, q: 2, c: 3, z: 0 };

/**
 * The outline that `seeds/make-lettering.mjs` wrote as one string: numbers relative to where the last command ended, a
 * letter for all commands of its kind that follow.
 */
export function decodeOutline(text: string): Path {
  const path: PathCommand[] = [];
  let [x, y, startX, startY] = [0, 0, 0, 0];
  for (const [, letter = '', list = ''] of text.matchAll(/([mlqcz])([^mlqcz]*)/g)) {
    if (letter === 'z') {
      path.push(['Z']);
      [x, y] = [startX, startY];
      continue;
    }
    const numbers = (list.match(/-?\d+/g) ?? []).map(Number);
    const perCommand = 2 * POINTS[letter]!;
    for (let i = 0; i < numbers.length; i += perCommand) {
      const ends = numbers.slice(i, i + perCommand).map((value, j) => value + (j % 2 === 0 ? x : y));
      [x, y] = [ends.at(-2)!, ends.at(-1)!];
      if (letter === 'm') [startX, startY] = [x, y];
      path.push([letter.toUpperCase(), ...ends] as unknown as PathCommand);
    }
  }
  return path;
}
