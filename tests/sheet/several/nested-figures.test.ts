import { describe, expect, it } from 'vitest';
import type { RoundBand } from '../../../src/geometry/development.ts';
import { MARK_KINDS } from '../../../src/sheet/marks/mark-kinds.ts';
import type { Paper } from '../../../src/sheet/paper.ts';
import { planSheets } from '../../../src/sheet/several/plan-sheets.ts';
import { arcPieceOf, byBoxes } from './arc-pieces.ts';
import { A4, copies, PLAIN } from './sheets-law.ts';

const PAPERS = {
  a4: { id: 'a4', widthMm: 210, heightMm: 297 },
  a3: { id: 'a3', widthMm: 297, heightMm: 420 },
  a2: { id: 'a2', widthMm: 420, heightMm: 594 },
  'roll-610': { id: 'roll-610mm', widthMm: 610, heightMm: null },
  'roll-432': { id: 'roll-432mm', widthMm: 432, heightMm: null },
} as const satisfies Record<string, Paper>;

/** Diameters above and below, and height, mm. */
const BODIES = {
  'tumbler 89/70 x 140': [89, 70, 140],
  'mug 89/64 x 85': [89, 64, 85],
  'shot glass 50/42 x 45': [50, 42, 45],
  'sleeve 88/70 x 40': [88, 70, 40],
  'pot 60/36 x 30': [60, 36, 30],
  'lampshade 140/80 x 60': [140, 80, 60],
} as const;

const bandOf = ([topDiameterMm, bottomDiameterMm, heightMm]: readonly [
  number,
  number,
  number,
]): RoundBand => ({
  topDiameterMm,
  bottomDiameterMm,
  heightMm,
});

/** Of sheets, how many 12 pieces need; of a roll, what 6 take of it, mm. No marks, bleeds of 3 mm and 3 mm between. */
function figureOf(body: keyof typeof BODIES, paper: keyof typeof PAPERS, nest: boolean): number {
  const request = { ...A4, paper: PAPERS[paper] };
  const isRoll = request.paper.heightMm === null;
  const all = copies(isRoll ? 6 : 12, arcPieceOf(bandOf(BODIES[body])));
  const { sheets } = planSheets(nest ? all : byBoxes(all), request, { ...PLAIN, without: MARK_KINDS });
  if (!isRoll) return sheets.length;
  return sheets.reduce(
    (sum, { page: { orientation, sizeMm } }) =>
      sum + (orientation === 'portrait' ? sizeMm.height : sizeMm.width),
    0,
  );
}

/** As measured; that pieces lie as figures say is held by nest-arcs.test.ts. Where both are the same, boxes are as good. */
const FIGURES = [
  ['tumbler 89/70 x 140', 'a3', 12, 12],
  ['tumbler 89/70 x 140', 'a2', 3, 3],
  ['tumbler 89/70 x 140', 'roll-610', 495, 476],
  ['tumbler 89/70 x 140', 'roll-432', 884, 884],
  ['mug 89/64 x 85', 'a4', 12, 12],
  ['mug 89/64 x 85', 'a3', 4, 4],
  ['mug 89/64 x 85', 'a2', 2, 2],
  ['mug 89/64 x 85', 'roll-610', 367, 334],
  ['mug 89/64 x 85', 'roll-432', 579, 579],
  ['shot glass 50/42 x 45', 'a4', 3, 3],
  ['shot glass 50/42 x 45', 'a3', 2, 2],
  ['shot glass 50/42 x 45', 'roll-610', 139, 131],
  ['shot glass 50/42 x 45', 'roll-432', 179, 179],
  ['sleeve 88/70 x 40', 'a4', 6, 6],
  ['sleeve 88/70 x 40', 'a3', 3, 2],
  ['sleeve 88/70 x 40', 'a2', 2, 1],
  ['sleeve 88/70 x 40', 'roll-610', 275, 220],
  ['sleeve 88/70 x 40', 'roll-432', 539, 280],
  ['pot 60/36 x 30', 'a4', 3, 3],
  ['pot 60/36 x 30', 'a3', 2, 2],
  ['pot 60/36 x 30', 'roll-610', 154, 142],
  ['pot 60/36 x 30', 'roll-432', 225, 171],
  ['lampshade 140/80 x 60', 'a3', 12, 6],
  ['lampshade 140/80 x 60', 'a2', 4, 3],
  ['lampshade 140/80 x 60', 'roll-610', 649, 649],
  ['lampshade 140/80 x 60', 'roll-432', 917, 649],
] as const;

describe('figures of arcs in the hollows of others', () => {
  it.each(FIGURES)('%s on %s: %s by boxes, %s nested', (body, paper, boxes, nested) => {
    expect([figureOf(body, paper, false), figureOf(body, paper, true)]).toEqual([boxes, nested]);
  });

  it('are worked by hand for sleeves on a narrow roll: six across it nested, by boxes fewer', () => {
    const { arc, bleedMm } = arcPieceOf(bandOf(BODIES['sleeve 88/70 x 40']));
    const { outerRadiusMm: R, innerRadiusMm: r, angleRad } = arc!;
    const [sin, cos] = [Math.sin(angleRad / 2), Math.cos(angleRad / 2)];
    const height = R - r * cos;
    expect([bleedMm.width, bleedMm.height]).toEqual([
      expect.closeTo(2 * R * sin, 9),
      expect.closeTo(height, 9),
    ]);
    const acrossMm = 432 - 2 * 6.35;
    expect(Math.floor((acrossMm + 3) / (height + 3))).toBeLessThan(6);
    expect(height + 5 * (Math.sqrt((R + 3) ** 2 - (r * sin) ** 2) - r * cos)).toBeLessThan(acrossMm);
    // As long as one of them and both margins, cut at a whole millimetre; else six below each other, or two lengths.
    expect(Math.ceil(2 * R * sin + 2 * 6.35)).toBe(280);
    expect(Math.ceil(6 * (height + 3) - 3 + 2 * 6.35)).toBe(539);
    expect(Math.ceil(2 * (2 * R * sin) + 3 + 2 * 6.35)).toBe(549);
  });
});
