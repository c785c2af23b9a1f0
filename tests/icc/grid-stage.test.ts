import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { makeAnyGridStage, makeGridStage } from '../../src/icc/grid-stage.ts';
import type { Grid } from '../../src/icc/lut.ts';
import { runStages } from '../../src/icc/stage.ts';
import { makeGenerator } from './random-colours.ts';

function randomGrid(sizes: readonly number[], outputs: number): Grid {
  const next = makeGenerator(sizes.length * 10 + outputs);
  const count = sizes.reduce((product, size) => product * size, outputs);
  return { kind: 'grid', sizes, outputs, values: Uint16Array.from({ length: count }, () => next() >>> 16) };
}

/** Values 0…1, a little beyond, and on nodes, where cells meet. */
const value = fc.oneof(
  fc.double({ min: -0.2, max: 1.2, noNaN: true }),
  fc.constantFrom(0, 0.25, 0.5, 0.75, 1, 1 / 3, 2 / 3),
);

describe.each([
  [[2, 2, 2], 3],
  [[4, 3, 5], 4],
  [[9, 9, 9], 1],
  [[2, 2, 2, 2], 3],
  [[5, 3, 4, 2], 3],
] as const)('a grid of %j nodes to %i channels', (sizes, outputs) => {
  const grid = randomGrid(sizes, outputs);
  const colour = fc.array(value, { minLength: sizes.length, maxLength: sizes.length });

  it('is interpolated by the flat stage as by the one for any number of inputs', () => {
    fc.assert(
      fc.property(colour, (input) => {
        const flat = runStages([makeGridStage(grid)], input, outputs);
        const plain = runStages([makeAnyGridStage(grid)], input, outputs);
        for (const [i, found] of flat.entries()) expect(found).toBeCloseTo(plain[i]!, 12);
      }),
      { seed: 44, numRuns: 500 },
    );
  });

  it('has its own values at its nodes', () => {
    const nodes = grid.values.length / outputs;
    for (let node = 0; node < nodes; node += Math.ceil(nodes / 50)) {
      let rest = node;
      const input = sizes.toReversed().map((size) => {
        const at = rest % size;
        rest = Math.floor(rest / size);
        return at / (size - 1);
      });
      const found = runStages([makeGridStage(grid)], input.reverse(), outputs);
      for (const [k, result] of found.entries())
        expect(result).toBeCloseTo(grid.values[node * outputs + k]! / 65535, 10);
    }
  });
});

describe('simplex interpolation', () => {
  // By hand: along a cell's diagonal only its first and last corner count, along an edge only its two ends.
  it('goes straight along the diagonal of a cell', () => {
    const grid = randomGrid([2, 2, 2, 2], 1);
    const [first, last] = [grid.values[0]!, grid.values[15]!];
    for (const part of [0.1, 0.5, 0.9]) {
      const [found] = runStages([makeGridStage(grid)], [part, part, part, part], 1);
      expect(found).toBeCloseTo((first + (last - first) * part) / 65535, 12);
    }
  });

  it('takes the corners in the order of the fractions', () => {
    const grid: Grid = {
      kind: 'grid',
      sizes: [2, 2, 2],
      outputs: 1,
      values: Uint16Array.from([0, 1, 2, 3, 4, 5, 6, 7].map((n) => n ** 2 * 1000)),
    };
    // 0.7 > 0.5 > 0.2 on axes 2, 0, 1: nodes 000, 001, 101, 111 are 0, 1, 25, 49 thousand.
    const [found] = runStages([makeGridStage(grid)], [0.5, 0.2, 0.7], 1);
    expect(found).toBeCloseTo((0.3 * 0 + 0.2 * 1000 + 0.3 * 25000 + 0.2 * 49000) / 65535, 12);
  });

  it('works with one input, and with five', () => {
    const one: Grid = { kind: 'grid', sizes: [3], outputs: 1, values: Uint16Array.of(0, 10000, 65535) };
    expect(runStages([makeGridStage(one)], [0.25], 1)[0]).toBeCloseTo(5000 / 65535, 12);
    const five = randomGrid([2, 2, 2, 2, 2], 2);
    expect(runStages([makeGridStage(five)], [1, 1, 1, 1, 1], 2)[1]).toBeCloseTo(five.values[63]! / 65535, 12);
  });
});
