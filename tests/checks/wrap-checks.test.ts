import { describe, expect, it } from 'vitest';
import { findBlank } from '../../src/catalogue/catalogue.ts';
import { checkArtwork, type PrintRequest } from '../../src/check-artwork.ts';
import { artworkOf, CLEAR, paintRaster, type Rgba } from '../pictures.ts';

const SAND: Rgba = [230, 215, 190, 255];
const NIGHT: Rgba = [20, 20, 40, 255];
const INK: Rgba = [0, 0, 0, 255];

async function judge(
  blankId: string,
  paint: (x: number, y: number) => Rgba,
  request: Partial<PrintRequest> = {},
) {
  const artwork = artworkOf(paintRaster(1200, 400, paint));
  const blank = findBlank(blankId)!;
  const { outcomes, job } = await checkArtwork(artwork, { blank, ppi: 100, ...request });
  const codes = outcomes.flatMap((outcome) =>
    outcome.status === 'found' ? outcome.findings.map(({ code }) => `${outcome.check}/${code}`) : [],
  );
  const wrapCodes = codes.filter((code) =>
    /^(taper|wrap-length|seam-match|handle-clear|face-in-view|lip-band)\//.test(code),
  );
  const of = (check: string) => outcomes.find((outcome) => outcome.check === check)!;
  return { wrapCodes, of, job: job! };
}

const plain = () => SAND;
/** Fine stripes: detail in every millimetre. */
const striped = (x: number): Rgba => (Math.floor(x / 5) % 2 === 0 ? INK : SAND);
const around = { wrap: { kind: 'around' } } as const;

describe('checks of round bodies', () => {
  it('are skipped for flat blanks, none of them passed', async () => {
    const { of } = await judge('tile-ceramic-8in', plain);
    for (const check of ['taper', 'wrap-length', 'seam-match', 'handle-clear', 'face-in-view', 'lip-band'])
      expect(of(check).status).toBe('skipped');
  });

  it('find nothing in plain art once round a straight tumbler, clear of the rim', async () => {
    const { wrapCodes } = await judge('tumbler-20oz-straight', plain, around);
    expect(wrapCodes).toEqual([]);
  });
});

describe('taper', () => {
  it('finds a rectangle that was asked for on a tapered body, with the errors at both ends', async () => {
    const { wrapCodes, of } = await judge('tumbler-20oz-tapered', plain, {
      ...around,
      development: 'rectangle',
    });
    expect(wrapCodes).toEqual(['taper/will-not-fit']);
    const outcome = of('taper');
    if (outcome.status !== 'found') throw new Error('Expected a finding.');
    expect(outcome.findings[0]!.facts.rimErrorMm).toBeCloseTo(-26.114, 2);
    expect(outcome.findings[0]!.facts.footErrorMm).toBeCloseTo(26.114, 2);
  });

  it('passes a rectangle on a straight body', async () => {
    const { of } = await judge('tumbler-20oz-straight', plain, { ...around, development: 'rectangle' });
    expect(of('taper').status).toBe('passed');
  });
});

describe('wrap-length', () => {
  // Once round 74 mm is 232.48 mm; the overlap is 3 mm.
  it.each([
    [231.6, []],
    [231.4, ['wrap-length/bare-strip']],
    [200, ['wrap-length/bare-strip']],
    [190, []],
    [236.4, []],
    [236.6, ['wrap-length/laps-over']],
  ])('of art %f mm wide asked to go round: %j', async (widthMm, expected) => {
    const { wrapCodes } = await judge('tumbler-20oz-straight', plain, { ...around, widthMm });
    expect(wrapCodes.filter((code) => code.startsWith('wrap-length'))).toEqual(expected);
  });

  it('is a warning where the art was asked to go round, else advice', async () => {
    const asked = (await judge('tumbler-20oz-straight', plain, { ...around, widthMm: 225 })).of(
      'wrap-length',
    );
    const unasked = (await judge('tumbler-20oz-straight', plain, { widthMm: 225 })).of('wrap-length');
    expect([asked, unasked].map((one) => one.status === 'found' && one.findings[0]!.severity)).toEqual([
      'warning',
      'advice',
    ]);
  });
});

describe('seam-match', () => {
  const halves = (x: number): Rgba => (x < 600 ? SAND : [120, 60, 40, 255]);
  it('finds ends that differ', async () => {
    expect((await judge('tumbler-20oz-straight', halves, around)).wrapCodes).toEqual([
      'seam-match/ends-differ',
    ]);
  });
  it('passes ends that fit together, whatever is between them', async () => {
    const middle = (x: number): Rgba => (x > 300 && x < 900 ? INK : SAND);
    expect((await judge('tumbler-20oz-straight', middle, around)).wrapCodes).toEqual([]);
  });
  it('counts the length along which they differ: up to a tenth passes', async () => {
    const patch =
      (share: number) =>
      (x: number, y: number): Rgba =>
        x < 20 && y < 400 * share ? [120, 60, 40, 255] : SAND;
    expect((await judge('tumbler-20oz-straight', patch(0.08), around)).wrapCodes).toEqual([]);
    expect((await judge('tumbler-20oz-straight', patch(0.15), around)).wrapCodes).toEqual([
      'seam-match/ends-differ',
    ]);
  });
  it('advises against a dark solid in the overlap', async () => {
    expect((await judge('tumbler-20oz-straight', () => NIGHT, around)).wrapCodes).toEqual([
      'seam-match/dark-overlap',
    ]);
  });
  it('is skipped where a handle parts the ends', async () => {
    expect((await judge('mug-11oz', halves, around)).of('seam-match').status).toBe('skipped');
  });
});

describe('handle-clear', () => {
  // The gap is 41.7 mm; 11 mm on either side of its middle are the handle's: 9.85 mm are free beyond each end.
  it.each([
    [9.8, []],
    [9.9, ['handle-clear/into-gap']],
  ])('with a bleed of %f mm gives %j', async (bleedMm, expected) => {
    const { wrapCodes } = await judge('mug-11oz', plain, { widthMm: 250, bleedMm });
    expect(wrapCodes.filter((code) => code.startsWith('handle'))).toEqual(expected);
  });
});

describe('face-in-view', () => {
  // 45 degrees of a body 82 mm across are 32.2 mm along it; of stripes all over, the share beyond is 1 - 64.4 / width.
  it.each([
    [79, []],
    [83, ['face-in-view/turned-away']],
  ])('of detail all over %f mm gives %j', async (widthMm, expected) => {
    const { wrapCodes } = await judge('mug-11oz', striped, { wrap: { kind: 'one-face' }, widthMm, ppi: 200 });
    expect(wrapCodes).toEqual(expected);
  });
  // On the tapered tumbler of 251.7 mm paper: from 0.85 of that on the art goes round.
  it.each([
    [150, 'found'],
    [205, 'found'],
    [220, 'skipped'],
  ])('judges art of %d mm in the middle of the paper as one face: %s', async (widthMm, status) => {
    expect((await judge('tumbler-20oz-tapered', striped, { widthMm })).of('face-in-view').status).toBe(
      status,
    );
  });
  it('does not mind plain colour there, nor art that goes round', async () => {
    expect((await judge('mug-11oz', plain, { wrap: { kind: 'one-face' }, widthMm: 85 })).wrapCodes).toEqual(
      [],
    );
    expect((await judge('tumbler-20oz-straight', striped, around)).of('face-in-view').status).toBe('skipped');
  });
});

describe('lip-band', () => {
  // The mug's print begins 3 mm below its rim; art 100 x 33.33 mm in the middle of 88.9 mm begins 27.8 mm below that.
  it.each([
    [-10, []],
    [-10.9, ['lip-band/near-rim']],
  ])('of art moved by %f mm gives %j', async (y, expected) => {
    const { wrapCodes } = await judge('mug-11oz', plain, { widthMm: 100, offsetMm: { x: 0, y } });
    expect(wrapCodes).toEqual(expected);
  });
  it('does not count white at the top, where it prints nothing', async () => {
    const lower = (_: number, y: number): Rgba => (y < 200 ? [255, 255, 255, 255] : SAND);
    expect((await judge('mug-11oz', lower, { widthMm: 200 })).wrapCodes).toEqual([]);
  });
});

describe('art of the wrong proportions once round', () => {
  const fact = async (request: Partial<PrintRequest>) => {
    const outcome = (await judge('mug-11oz', plain, request)).of('print-size');
    return outcome.status === 'found' ? outcome.findings[0]!.facts.repeats : 'passed';
  };
  // 1200 x 400 px turned upright: once round it is 648 mm high on a print of 89, so that many fit side by side.
  it('names as many repeats as are as high as the blank has room for', async () => {
    const times = await fact({ ...around, turn: 90 });
    expect(times).toBeGreaterThanOrEqual(5);
    const { job } = await judge('mug-11oz', plain, {
      wrap: { kind: 'repeat', times: Number(times) },
      turn: 90,
    });
    expect(job.placementMm.height).toBeCloseTo(88.9 - 2 * job.blank.safe.value, 3);
  });
  it('names none where the size was asked for, or the art fits', async () => {
    expect(await fact({ widthMm: 200, turn: 90 })).toBeUndefined();
    expect(await fact({ ...around })).toBe('passed');
  });
});

describe('places', () => {
  it('puts a face a quarter of the way round from the handle, the right one for the right hand', async () => {
    const middle = async (hand?: 'left' | 'right') => {
      const { job } = await judge('mug-11oz', plain, {
        wrap: { kind: 'one-face' },
        widthMm: 60,
        ...(hand && { hand }),
      });
      return job.placementMm.x + 30;
    };
    // The trade's habit: 43.5 mm from the end of the paper (pi D / 4 - gap / 2).
    expect(await middle('left')).toBeCloseTo((Math.PI * 82) / 4 - 41.7 / 2, 6);
    const width = Math.PI * 82 - 41.7;
    expect(await middle()).toBeCloseTo(width - ((Math.PI * 82) / 4 - 41.7 / 2), 6);
  });
  it('repeats on both faces, half the way round apart', async () => {
    const { job } = await judge('mug-11oz', plain, { wrap: { kind: 'two-faces' }, widthMm: 60 });
    expect(job.copiesMm.length).toBe(1);
    expect(job.copiesMm[0]).toBeCloseTo((Math.PI * 82) / 2, 9);
  });
  it('goes once round, and over the overlap again', async () => {
    const { job } = await judge('tumbler-20oz-straight', plain, around);
    expect(job.placementMm.x).toBeCloseTo(0, 9);
    expect(job.placementMm.width).toBeCloseTo(Math.PI * 74, 9);
    expect(job.copiesMm).toEqual([-Math.PI * 74, Math.PI * 74]);
  });
  it.each([1, 2, 3, 7])('repeats %i times at equal distances', async (times) => {
    const { job } = await judge('tumbler-20oz-straight', plain, { wrap: { kind: 'repeat', times } });
    const pitch = (Math.PI * 74) / times;
    const places = [0, ...job.copiesMm].toSorted((one, other) => one - other);
    expect(places.length).toBe(times + 2);
    for (const [index, place] of places.entries()) expect(place).toBeCloseTo((index - 1) * pitch, 9);
    expect(job.placementMm.width).toBeLessThan(pitch);
  });
  it('leaves the middle opposite the handle where nothing is said', async () => {
    const { job } = await judge('mug-11oz', plain, { widthMm: 60 });
    expect(job.placementMm.x + 30).toBeCloseTo((Math.PI * 82 - 41.7) / 2, 9);
  });
  it('shows no transparent gap where the art follows on itself', async () => {
    const { job } = await judge('tumbler-20oz-straight', (x) => (x === 0 ? CLEAR : SAND), around);
    expect(job.copiesMm.length).toBe(2);
  });
  it.each([
    [{ wrap: { kind: 'around' }, fit: 'cover' }, 'bad-option'],
    [{ hand: 'left' }, 'bad-option'],
    [{ wrap: { kind: 'repeat', times: 90 } }, 'bad-option'],
    [{ measured: { kind: 'rect', widthMm: 215, heightMm: 89 } }, 'measured-does-not-fit'],
    [{ measured: { kind: 'body', topDiameterMm: 257 } }, 'measured-does-not-fit'],
    [{ measured: { kind: 'body', topDiameterMm: 22 } }, 'measured-does-not-fit'],
    [{ measured: { kind: 'body', heightMm: 120 } }, 'measured-does-not-fit'],
    [{ measured: { kind: 'body', heightMm: 0 } }, 'bad-wrap'],
  ] as const)('refuses %j on a mug with %s', async (request, code) => {
    await expect(judge('mug-11oz', plain, request as Partial<PrintRequest>)).rejects.toMatchObject({ code });
  });
});
