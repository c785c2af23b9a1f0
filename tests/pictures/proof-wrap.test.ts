import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { makeProofTable } from '../../src/icc/proof-table.ts';
import { findBlank, preflight } from '../../src/index.ts';
import type { WrapPlacing } from '../../src/job/wrap-places.ts';
import { makeArt } from '../cli/art.ts';

const VIVID = [0, 255, 0] as const;

async function proofOf(id: string, mark: boolean, wrap: WrapPlacing = { kind: 'around' }) {
  const request = { blank: findBlank(id)!, wrap };
  const { proof } = await preflight({ path: 'bed.png', bytes: makeArt(VIVID) }, request, {
    write: false,
    proof: { mark },
  });
  const { data, width, height } = PNG.sync.read(Buffer.from(proof!.bytes));
  const shareOf = (colour: readonly number[], within: number) => {
    let found = 0;
    for (let i = 0; i < data.length; i += 4)
      if (data[i + 3] === 255 && colour.every((value, k) => Math.abs(data[i + k]! - value) <= within))
        found++;
    return found / (width * height);
  };
  return { shareOf, data };
}

describe.each(['mug-11oz', 'tumbler-20oz-tapered'])('the proof of a %s', (id) => {
  it('shows body and paper in the colour that is printed, nowhere in that of the art', async () => {
    const { profile } = await loadCondition('coated-reference');
    const printed = makeProofTable(profile)
      .convert([0, 1, 0])
      .map((value) => Math.round(value * 255));
    const { shareOf } = await proofOf(id, false);
    expect(shareOf(printed, 2)).toBeGreaterThan(0.3);
    expect(shareOf(VIVID, 40)).toBe(0);
  });

  it('stripes what cannot be printed, there too', async () => {
    const { profile } = await loadCondition('coated-reference');
    const printed = makeProofTable(profile)
      .convert([0, 1, 0])
      .map((value) => Math.round(value * 255));
    const { shareOf } = await proofOf(id, true);
    expect(shareOf(printed, 2)).toBeLessThan(0.02);
  });
});

describe.each([
  ['mug-11oz', { kind: 'two-faces' }, 2],
  ['mug-11oz', { kind: 'repeat', times: 3 }, 3],
  ['tumbler-20oz-tapered', { kind: 'repeat', times: 2 }, 2],
] as const)('the proof of a %s, %j', (id, wrap, times) => {
  // One picture marked leaves (times - 1) / times of the paper as it was: far above what the rims of stripes leave.
  it('stripes every repeat of the picture', async () => {
    const { profile } = await loadCondition('coated-reference');
    const printed = makeProofTable(profile)
      .convert([0, 1, 0])
      .map((value) => Math.round(value * 255));
    const before = (await proofOf(id, false, wrap)).shareOf(printed, 2);
    const after = (await proofOf(id, true, wrap)).shareOf(printed, 2);
    expect(before).toBeGreaterThan(0.05);
    expect(after / before).toBeLessThan(0.1 / times);
  });
});
