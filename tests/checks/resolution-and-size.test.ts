import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findTooFineArt } from '../../src/checks/too-fine-art.ts';
import type { VectorFacts } from '../../src/formats/artwork.ts';
import { GREEN, paintRaster } from '../pictures.ts';
import { blankOf, codesOf, findingsOf, outcomesOf, PLATE, subjectOf } from './jobs.ts';

const art = (widthPx: number, heightPx = widthPx) => paintRaster(widthPx, heightPx, () => GREEN);
const resolution = (ppi: number, id: string) => {
  const widthMm = 50.8;
  return codesOf(
    outcomesOf(art(400), {
      blank: blankOf(id),
      widthMm: (400 / ppi) * 25.4 > 0 ? (400 / ppi) * 25.4 : widthMm,
    }),
  ).filter((code) => code.startsWith('effective'));
};

describe('effective-resolution', () => {
  // Limits of seeds/families.json: hard glossy 300/220/150, slate 240/180/120, cloth 200/150/100.
  it.each([
    ['tile-ceramic-8in', 300, 220, 150],
    ['slate-rect-15x20cm', 240, 180, 120],
    ['flag-garden', 200, 150, 100],
  ])('%s: %d good, %d acceptable, below %d stop; at the limit passes', (id, good, acceptable, stop) => {
    expect(resolution(good, id)).toEqual([]);
    expect(resolution(good - 0.1, id)).toEqual(['effective-resolution/below-good:advice']);
    expect(resolution(acceptable, id)).toEqual(['effective-resolution/below-good:advice']);
    expect(resolution(acceptable - 0.1, id)).toEqual(['effective-resolution/below-acceptable:warning']);
    expect(resolution(stop, id)).toEqual(['effective-resolution/below-acceptable:warning']);
    expect(resolution(stop - 0.1, id)).toEqual(['effective-resolution/below-stop:error']);
  });

  it('pixels over printed inches, on both axes, at the worst', () => {
    const [found] = findingsOf(
      outcomesOf(art(700, 900), { widthMm: 88.9, heightMm: 88.9 }),
      'effective-resolution',
    );
    expect(found!.actual).toEqual({ value: expect.closeTo(200, 9), unit: 'ppi' });
    expect(found!.expected).toEqual({ min: 220, unit: 'ppi', from: 'family:ceramic-tile' });
    // 700 px at 220 ppi are 3.1818 in.
    expect(found!.facts.widthAtAimMm).toBeCloseTo((700 / 220) * 25.4, 9);
  });

  it('a limit of round ppi passes for any width in hundredths of an inch', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: 400 }), (quarters) => {
        const inches = quarters / 100;
        if (!Number.isInteger(inches * 300)) return;
        expect(
          codesOf(outcomesOf(art(Math.round(inches * 300), 30), { widthMm: inches * 25.4 })).filter((code) =>
            code.startsWith('eff'),
          ),
        ).toEqual([]);
      }),
      { seed: 21, numRuns: 60 },
    );
  });

  const drawing = (pictures: VectorFacts['pictures']): VectorFacts => ({
    textElements: 0,
    outsideReferences: [],
    pictures,
    unplacedPictures: 0,
  });

  it('a drawing passes with the fact, a coarse picture inside it does not', () => {
    const clean = outcomesOf(art(100), { widthMm: 50 }, { format: 'svg', vector: drawing([]) });
    expect(clean.find(({ check }) => check === 'effective-resolution')).toMatchObject({
      status: 'passed',
      facts: { vector: true },
    });
    const coarse = drawing([{ widthPx: 20, heightPx: 40, shownWidthPx: 40, shownHeightPx: 40 }]);
    const [found] = findingsOf(
      outcomesOf(art(400), { widthMm: 25.4 }, { format: 'svg', vector: coarse }),
      'effective-resolution',
    );
    expect(found).toMatchObject({
      code: 'below-acceptable',
      actual: { value: expect.closeTo(200, 9) },
      facts: { vector: true },
    });
  });
});

describe('print-size', () => {
  const size = (outcomes: ReturnType<typeof outcomesOf>) =>
    codesOf(outcomes).filter((code) => code.startsWith('print-size'));

  it('art up to the bleed line is not larger than the blank, a hundredth beyond is', () => {
    // The rounded corners of the bleed line cut even art of exactly that size.
    const disc = paintRaster(400, 400, (x, y) =>
      Math.hypot(x - 199.5, y - 199.5) < 200 ? GREEN : [0, 0, 0, 0],
    );
    expect(size(outcomesOf(disc, { widthMm: 106 }))).toEqual([]);
    expect(size(outcomesOf(disc, { widthMm: 106.02 }))).toEqual(['print-size/larger-than-blank:warning']);
  });

  it('names the overhang of each side', () => {
    const [found] = findingsOf(
      outcomesOf(art(300, 100), { widthMm: 110, offsetMm: { x: 1, y: 0 } }),
      'print-size',
    );
    expect(found!.actual!.value).toBeCloseTo(3, 9);
    expect(found!.facts).toMatchObject({ leftMm: expect.closeTo(1, 9), rightMm: expect.closeTo(3, 9) });
    expect(found!.facts.topMm).toBeUndefined();
  });

  it('under --fit cover the same is advice with another code', () => {
    expect(size(outcomesOf(art(300, 200), { fit: 'cover' }))).toEqual(['print-size/cut:advice']);
  });

  it('scales that differ by exactly 1 % pass, by more do not', () => {
    expect(size(outcomesOf(art(100), { widthMm: 50, heightMm: 50.5 }))).toEqual([]);
    expect(size(outcomesOf(art(100), { widthMm: 50, heightMm: 50.51 }))).toEqual([
      'print-size/stretched:warning',
    ]);
    expect(size(outcomesOf(art(100, 200), { widthMm: 50, heightMm: 100 }))).toEqual([]);
  });
});

describe('print-size/too-fine: art that is thinner as a whole than a stroke', () => {
  // Ceramic tile: 0.25 mm dark on white (seeds/families.json); a pixel of 300 ppi is 0.0847 mm.
  const gravity = (raster: ReturnType<typeof art>, request: Parameters<typeof outcomesOf>[1]) =>
    codesOf(outcomesOf(raster, request)).filter((code) => code.startsWith('print-size/too-fine'));
  it.each([
    [0.001, ['print-size/too-fine:error']],
    [0.08, ['print-size/too-fine:error']],
    [0.086, ['print-size/too-fine:warning']],
    [0.249, ['print-size/too-fine:warning']],
    [0.25, []],
  ])('art %d mm wide: %j', (widthMm, expected) => expect(gravity(art(100), { widthMm })).toEqual(expected));

  // 25.4 mm / ppi, to a hundred-thousandth.
  it.each([
    [300, 0.08466],
    [150, 0.16933],
  ])('by one pixel of a print at %d ppi, %d mm, where the family names no stroke', (ppi, pixelMm) => {
    const find = (widthMm: number) => {
      const { job } = subjectOf(art(100), { ppi, widthMm });
      return findTooFineArt({ ...job!, blank: { ...job!.blank, smallestStroke: null } });
    };
    expect(find(pixelMm + 1e-5)).toEqual([]);
    const [found] = find(pixelMm - 1e-5);
    expect(found!.severity).toBe('error');
    expect(found!.expected).toEqual({
      min: expect.closeTo(pixelMm, 4),
      unit: 'mm',
      from: 'derived:pixel-of-print',
    });
  });

  it('names a width at which it shows, where the blank has room for it', () => {
    const facts = (raster: ReturnType<typeof art>, request: Parameters<typeof outcomesOf>[1]) =>
      findingsOf(outcomesOf(raster, request), 'print-size')[0]!.facts;
    expect(facts(art(100), { widthMm: 0.001 }).widthToShowMm).toBe(0.3);
    expect(facts(art(1, 10_000), {}).widthToShowMm).toBeUndefined();
  });
});

describe('common practice, no source: art 7.00 in wide on a tile of just under 8 in', () => {
  it('leaves 11.1 mm (0.437 in) on each side', () => {
    const outcomes = outcomesOf(art(2100), { blank: blankOf('tile-ceramic-8in'), widthMm: 177.8 });
    expect(codesOf(outcomes)).toEqual([]);
    expect((200 - 177.8) / 2).toBeCloseTo(11.1, 9);
  });
});

describe('every check has its say once, in the order of the list', () => {
  it('even when nothing is visible', () => {
    const outcomes = outcomesOf(
      paintRaster(5, 5, () => [9, 9, 9, 0]),
      { blank: PLATE },
    );
    expect(codesOf(outcomes)).toEqual(['visible-content/nothing-visible:error']);
    expect(outcomes.filter(({ status }) => status === 'skipped').map(({ check }) => check)).toEqual([
      'effective-resolution',
      'true-detail',
      'compression-blocks',
      'banding',
      'thin-detail',
      'print-size',
      'bleed-cover',
      'safe-area',
      'thin-border',
      'keep-out',
      'edge-detail',
      'taper',
      'wrap-length',
      'seam-match',
      'handle-clear',
      'face-in-view',
      'lip-band',
      'transparent-margin',
      'stray-pixels',
      'alpha-haze',
      'near-white-box',
      'hollow-alpha',
      'edge-fringe',
      'cut-off-edge',
      'stated-density',
      'gamut',
      'dark-coverage',
      'marked-preview',
      'sheet-fit',
    ]);
  });
});

describe('white-margin: white at the rim counts in the size and prints nothing', () => {
  /** 10 px a millimetre: green with a white rim, 100 mm wide. */
  const rimmed = (rimPx: number) =>
    paintRaster(1000, 1000, (x, y) =>
      Math.min(x, y, 999 - x, 999 - y) < rimPx ? [255, 255, 255, 255] : GREEN,
    );
  const found = (rimPx: number, baseColour?: string) =>
    findingsOf(
      outcomesOf(rimmed(rimPx), { blank: { ...PLATE, ...(baseColour ? { baseColour } : {}) }, widthMm: 60 }),
      'print-size',
    );

  it('a millimetre in all passes, more is told with the size that would fill', () => {
    // 60 mm on 1000 px: 8 px on both sides are 0.96 mm, 9 px are 1.08 mm.
    expect(found(8)).toEqual([]);
    const [margin] = found(100);
    expect(margin).toMatchObject({
      code: 'white-margin',
      severity: 'advice',
      facts: { inkWidthMm: expect.closeTo(48, 9), widthToFillMm: expect.closeTo(75, 9) },
    });
    expect(found(9)).toHaveLength(1);
  });

  it('on a coloured base white is not bare', () => expect(found(100, '#d9c7a0')).toEqual([]));
});

describe('measured-size', () => {
  const measured = (widthMm: number, heightMm: number) =>
    codesOf(outcomesOf(art(400), { widthMm: 20, measured: { kind: 'rect', widthMm, heightMm } })).filter(
      (code) => code.startsWith('measured'),
    );
  it.each([
    [100, 100, []],
    [110, 90, []],
    [110.1, 100, ['measured-size/far-from-nominal:warning']],
    [100, 89.9, ['measured-size/far-from-nominal:warning']],
  ])('%d x %d mm on a plate of 100 mm: %j', (width, height, expected) =>
    expect(measured(width, height)).toEqual(expected),
  );
});

describe('art beside the blank, and the corners of art that fits', () => {
  const size = (request: Parameters<typeof outcomesOf>[1], raster = art(300)) =>
    codesOf(outcomesOf(raster, request)).filter((code) => code.startsWith('print-size'));

  it('nothing of it on the canvas is an error, a millimetre of it is not', () => {
    // A plate of 100 mm with a bleed of 3: art of 20 mm leaves its canvas at an offset of 63 mm.
    expect(size({ widthMm: 20, offsetMm: { x: 63, y: 0 } })).toEqual(['print-size/off-blank:error']);
    expect(size({ widthMm: 20, offsetMm: { x: 62, y: 0 } })).toEqual([
      'print-size/larger-than-blank:warning',
    ]);
  });

  it('on four sides the arcs of the bleed line round its corners are no overhang', () => {
    expect(size({ widthMm: 106 })).toEqual([]);
    expect(size({ fit: 'cover' })).toEqual([]);
    expect(size({ widthMm: 106.01 })).toEqual(['print-size/larger-than-blank:warning']);
    const rounded = {
      ...PLATE,
      outline: { shape: 'rounded-rect', widthMm: 100, heightMm: 100, cornerRadiusMm: 8 },
    } as const;
    expect(size({ blank: rounded, widthMm: 106 })).toEqual([]);
  });

  it('on a round blank the corners of square art are cut, and told of', () => {
    expect(
      size({ blank: { ...PLATE, outline: { shape: 'circle', widthMm: 100, heightMm: 100 } }, widthMm: 106 }),
    ).toEqual(['print-size/larger-than-blank:warning']);
  });

  it('ragged art on an outline with an inward corner has many points, and none too many', () => {
    const corner = {
      shape: 'polygon',
      widthMm: 100,
      heightMm: 100,
      pointsMm: [
        [0, 0],
        [100, 0],
        [100, 100],
        [60, 100],
        [60, 60],
        [0, 60],
      ],
    } as const;
    const checkered = paintRaster(900, 900, (x, y) => ((x + y) % 2 === 0 ? GREEN : [0, 0, 0, 0]));
    const outcomes = outcomesOf(checkered, { blank: { ...PLATE, outline: corner }, widthMm: 130 });
    expect(outcomes.filter(({ status }) => status === 'broken')).toEqual([]);
  });
});

describe('pictures inside a drawing that cannot be measured', () => {
  it('are no pass', () => {
    const vector = { textElements: 0, outsideReferences: [], pictures: [], unplacedPictures: 2 };
    const outcomes = outcomesOf(art(100), { widthMm: 50 }, { format: 'svg', vector });
    expect(outcomes.find(({ check }) => check === 'effective-resolution')?.status).toBe('skipped');
  });
});
