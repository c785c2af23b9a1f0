import { describe, expect, it } from 'vitest';
import { writePng } from '../fixtures/byte-writers/write-png.ts';
import { checkArtwork, findBlank, readArtwork, suitArtwork } from '../src/index.ts';
import { makeArt } from './cli/art.ts';

const square = await readArtwork(makeArt([40, 120, 60], 2000));
const suitOn = (id: string, artwork = square) => {
  const { blanks } = suitArtwork(artwork, [findBlank(id)!]);
  return blanks[0]!;
};
const codesOf = async (request: Parameters<typeof checkArtwork>[1], check: string, artwork = square) => {
  const { outcomes } = await checkArtwork(artwork, request);
  const outcome = outcomes.find((one) => one.check === check)!;
  return outcome.status === 'found' ? outcome.findings.map(({ code }) => code) : [outcome.status];
};

describe('suitArtwork', () => {
  it('works out a square on a square tile by hand', () => {
    // 8 in tile: 200 mm, safe 5 mm each side; 2000 px on 190 mm.
    const suit = suitOn('tile-ceramic-8in');
    expect(suit).toMatchObject({ id: 'tile-ceramic-8in', verdict: 'acceptable', fullBleed: true });
    expect(suit.widthMm).toBeCloseTo(190, 6);
    expect(suit.effectivePpi).toBeCloseTo((2000 * 25.4) / 190, 6);
    expect(suit.fit).toBeCloseTo(1, 12);
  });

  it('agrees with the check of the resolution at each size it names, and just above', async () => {
    const blank = findBlank('tile-ceramic-8in')!;
    const { good, acceptable, widthMm } = suitOn(blank.id);
    const at = (mm: number) => codesOf({ blank, widthMm: mm }, 'effective-resolution');
    expect(await at(good.widthMm)).toEqual(['passed']);
    expect(await at(good.widthMm * 1.001)).toEqual(['below-good']);
    // The acceptable size is capped by what the blank takes.
    expect(acceptable.widthMm).toBe(widthMm);
  });

  it('agrees with the check of the bleed under cover', async () => {
    const all = suitArtwork(square).blanks;
    // Every fourth, so that all kinds of outline are met.
    for (const { id, fullBleed, verdict } of all.filter((_, i) => i % 4 === 0)) {
      if (verdict === 'below') continue;
      const blank = findBlank(id)!;
      const [code] = await codesOf({ blank, fit: 'cover' }, 'bleed-cover');
      if (fullBleed) expect(code, id).toBe('passed');
    }
  });

  it('finds no full bleed for art with clear corners on a square, nor for art that is too coarse', async () => {
    const side = 1600;
    const samples = Array.from({ length: side * side }, (_, i) => {
      const [x, y] = [(i % side) - side / 2 + 0.5, Math.floor(i / side) - side / 2 + 0.5];
      return [90, 40, 10, Math.abs(x) + Math.abs(y) <= side * 0.75 ? 255 : 0];
    }).flat();
    const octagon = await readArtwork(
      writePng({ widthPx: side, heightPx: side, colourType: 6, bitDepth: 8, samples }),
    );
    expect(suitOn('tile-ceramic-6in', octagon).fullBleed).toBe(false);
    expect(suitOn('coaster-ceramic-round-4in', octagon).fullBleed).toBe(true);
    expect(suitOn('panel-alu-16x20').fullBleed).toBe(false);
  });

  it('takes a drawing to be as fine as the print', async () => {
    const drawing = await readArtwork(
      new TextEncoder().encode(
        '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30"><rect width="40" height="30" fill="#284"/></svg>',
      ),
    );
    const suit = suitOn('tile-ceramic-8in', drawing);
    expect(suit).toMatchObject({ verdict: 'good', effectivePpi: 300, good: { widthMm: suit.widthMm } });
  });

  it('sorts by verdict, then full bleed, proportions, size and id, and names what it left out', () => {
    const { blanks, leftOut } = suitArtwork(square);
    const rank = ({ verdict }: { verdict: string }) => ['good', 'acceptable', 'below'].indexOf(verdict);
    for (const [i, suit] of blanks.slice(1).entries()) {
      const before = blanks[i]!;
      expect(rank(before)).toBeLessThanOrEqual(rank(suit));
      if (rank(before) === rank(suit))
        expect(Number(before.fullBleed)).toBeGreaterThanOrEqual(Number(suit.fullBleed));
    }
    expect(leftOut).toEqual([]);
    expect(blanks.map(({ id }) => id)).toContain('tumbler-20oz-tapered');
    expect(new Set([...blanks.map(({ id }) => id), ...leftOut]).size).toBe(blanks.length + leftOut.length);
  });

  it('is empty where nothing is visible', async () => {
    const samples = [0, 0, 0, 0];
    const clear = await readArtwork(
      writePng({ widthPx: 1, heightPx: 1, colourType: 6, bitDepth: 8, samples }),
    );
    expect(suitArtwork(clear)).toEqual({ blanks: [], leftOut: [] });
  });
});
