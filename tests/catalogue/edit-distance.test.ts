import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { editDistance } from '../../src/catalogue/edit-distance.ts';

const word = fc.string({ unit: fc.constantFrom('a', 'b', 'c'), maxLength: 7 });

/** The definition as a recursion over prefixes: slow, without a table to get wrong. */
function byDefinition(a: string, b: string): number {
  if (a === '' || b === '') return a.length + b.length;
  const [restA, restB] = [a.slice(0, -1), b.slice(0, -1)];
  const ways = [
    byDefinition(restA, b) + 1,
    byDefinition(a, restB) + 1,
    byDefinition(restA, restB) + (a.at(-1) === b.at(-1) ? 0 : 1),
  ];
  if (a.length > 1 && b.length > 1 && a.at(-1) === b.at(-2) && a.at(-2) === b.at(-1)) {
    ways.push(byDefinition(a.slice(0, -2), b.slice(0, -2)) + 1);
  }
  return Math.min(...ways);
}

describe('editDistance', () => {
  it.each([
    ['ceramic', 'ceramic', 0],
    ['ceramc', 'ceramic', 1],
    ['ceramicc', 'ceramic', 1],
    ['cerumic', 'ceramic', 1],
    ['cearmic', 'ceramic', 1],
    ['', 'mug', 3],
    ['ca', 'abc', 3], // 2 by the unrestricted distance, which edits a swapped pair again
  ])('from %s to %s is %i', (a, b, distance) => {
    expect(editDistance(a, b)).toBe(distance);
  });

  it('agrees with its definition', () => {
    fc.assert(
      fc.property(word, word, (a, b) => editDistance(a, b) === byDefinition(a, b)),
      { seed: 1, numRuns: 300 },
    );
  });

  it('is the same both ways, 0 only for equal texts, at most the longer length', () => {
    fc.assert(
      fc.property(fc.string(), fc.string(), (a, b) => {
        const distance = editDistance(a, b);
        expect(distance).toBe(editDistance(b, a));
        expect(distance === 0).toBe(a === b);
        expect(distance).toBeLessThanOrEqual(Math.max(a.length, b.length));
        expect(distance).toBeGreaterThanOrEqual(Math.abs(a.length - b.length));
      }),
      { seed: 2 },
    );
  });
});
