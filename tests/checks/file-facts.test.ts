import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/checks/index.ts';
import { runChecks } from '../../src/checks/run.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { blockRaster, GREEN, paintRaster, WHITE } from '../pictures.ts';
import { blankOf, codesOf, findingsOf, outcomesOf, PLATE, subjectOf } from './jobs.ts';

const good = paintRaster(400, 400, () => GREEN);
const codes = (changes: Partial<Artwork>) => codesOf(outcomesOf(good, { widthMm: 30 }, changes));

describe('one good job, one thing changed', () => {
  it('the good job gives nothing', () => expect(codes({})).toEqual([]));

  it.each([
    [1, []],
    [2, ['orientation-tag/mirrored:warning']],
    [3, ['orientation-tag/turned:advice']],
    [4, ['orientation-tag/mirrored:warning']],
    [5, ['orientation-tag/mirrored:warning']],
    [6, ['orientation-tag/turned:advice']],
    [7, ['orientation-tag/mirrored:warning']],
    [8, ['orientation-tag/turned:advice']],
  ])('orientation %d (CIPA DC-008): %j', (orientation, expected) =>
    expect(codes({ orientation })).toEqual(expected),
  );

  it.each([
    [{ kind: 'none', model: 'rgb' }, []],
    [{ kind: 'srgb', name: 'sRGB' }, []],
    [{ kind: 'rgb', name: 'wide' }, ['embedded-profile/converted:advice']],
    [{ kind: 'gray', name: 'gray' }, ['embedded-profile/converted:advice']],
    [{ kind: 'table', name: 'table' }, ['embedded-profile/converted:advice']],
    [{ kind: 'printer', name: 'printer', sha256: 'f' }, ['embedded-profile/printer-profile:warning']],
    [{ kind: 'cmyk', name: null, sha256: null }, ['embedded-profile/device-cmyk:warning']],
    [{ kind: 'unusable', reason: 'cut short' }, ['embedded-profile/unusable:warning']],
  ] as const)('profile %j: %j', (profile, expected) => expect(codes({ profile })).toEqual(expected));

  it.each([
    [1, []],
    [2, ['pages/more-than-one:warning']],
  ])('%d page(s): %j', (pages, expected) => expect(codes({ pages })).toEqual(expected));

  it('a print-ready file of our own', () => {
    const printRecord = {
      program: 'blankcheck',
      version: '0.1.0',
      sourceSha256: 'a',
      pixelSha256: 'b',
      blankId: 'x',
      widthMm: 1,
      heightMm: 1,
      ppi: 300,
      mirrored: true,
    } as const;
    expect(codes({ printRecord })).toEqual(['already-prepared/prepared-before:error']);
  });

  it('a drawing with live lettering and with outside references', () => {
    expect(
      codes({ vector: { textElements: 2, outsideReferences: [], pictures: [], unplacedPictures: 0 } }),
    ).toEqual(['vector-content/live-text:warning']);
    expect(
      codes({ vector: { textElements: 1, outsideReferences: ['a.png'], pictures: [], unplacedPictures: 0 } }),
    ).toEqual(['vector-content/live-text:warning', 'vector-content/outside-reference:warning']);
  });

  it('white art on a white blank prints nothing, on a coloured base it is art', () => {
    const white = paintRaster(400, 400, () => WHITE);
    expect(codesOf(outcomesOf(white, { widthMm: 30 }))).toEqual(['visible-content/prints-nothing:warning']);
    expect(codesOf(outcomesOf(white, { blank: { ...PLATE, baseColour: '#c8b090' }, widthMm: 30 }))).toEqual(
      [],
    );
  });
});

describe('stated-density against 400 px on 33.867 mm, which is 300 ppi', () => {
  const stated = (x: number, y: number, turn?: 90) =>
    codesOf(
      outcomesOf(good, { widthMm: (400 / 300) * 25.4, ...(turn ? { turn } : {}) }, { statedPpi: { x, y } }),
    );
  const found = ['stated-density/disagrees:advice'];
  it.each([
    [300, 300, []],
    [306, 300, []],
    [306.1, 300, found],
    [300, 293.9, found],
    [294, 294, []],
    [72, 72, found],
  ])('%d x %d: %j', (x, y, expected) => expect(stated(x, y)).toEqual(expected));

  it('the axes go along with the turn', () => {
    const wide = paintRaster(400, 200, () => GREEN);
    const request = { widthMm: 20, heightMm: 40, turn: 90 } as const;
    const ppi = { x: 400 / (40 / 25.4), y: 200 / (20 / 25.4) };
    expect(
      codesOf(outcomesOf(wide, request, { statedPpi: ppi })).filter((code) => code.startsWith('stated')),
    ).toEqual([]);
    expect(
      codesOf(
        outcomesOf(
          paintRaster(400, 300, () => GREEN),
          request,
          { statedPpi: { x: 254, y: 381 } },
        ),
      ).filter((code) => code.startsWith('stated')),
    ).toEqual([]);
  });
});

describe('transparent-margin', () => {
  it('each side in mm at the print size', () => {
    const [trimmed] = findingsOf(
      outcomesOf(blockRaster([100, 100], { x: 10, y: 20, width: 50, height: 40 }), { widthMm: 50 }),
      'transparent-margin',
    );
    expect(trimmed!.facts).toMatchObject({
      leftMm: expect.closeTo(10, 9),
      rightMm: expect.closeTo(40, 9),
      topMm: expect.closeTo(20, 9),
      bottomMm: expect.closeTo(40, 9),
    });
  });
  it('art that fills its canvas gives none', () =>
    expect(findingsOf(outcomesOf(good, { widthMm: 30 }), 'transparent-margin')).toEqual([]));
});

describe('runChecks', () => {
  it('a check that throws is broken, and the others have their say', () => {
    const bad = {
      ...CHECKS[0]!,
      id: 'bad',
      run: () => {
        throw new Error('oops');
      },
    };
    const outcomes = runChecks(subjectOf(good), [bad, CHECKS[1]!]);
    expect(outcomes.map(({ status }) => status)).toEqual(['broken', 'passed']);
  });

  it('every code that a check names has a phrase, and every phrase a code', () => {
    for (const check of CHECKS)
      expect(Object.keys(check.phrases).sort()).toEqual(Object.keys(check.codes).sort());
  });

  it('every check is in a file of its own name and says why and on what ground', () => {
    for (const check of CHECKS) {
      expect(check.reason.length).toBeGreaterThan(20);
      expect(check.source.length).toBeGreaterThan(0);
    }
    expect(new Set(CHECKS.map(({ id }) => id)).size).toBe(CHECKS.length);
  });

  it('the catalogue blank of the demo is known', () =>
    expect(blankOf('tile-ceramic-8in').outline?.widthMm).toBe(200));
});
