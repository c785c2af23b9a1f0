import { describe, expect, it } from 'vitest';
import { developBand } from '../../../src/geometry/development.ts';
import { apexOf, toStrip } from '../../../src/geometry/sector.ts';
import { layMarks } from '../../../src/sheet/marks/lay-marks.ts';
import { BLEED_GAP_MM } from '../../../src/sheet/marks/mark-style.ts';
import { type RollPaper, rollLines } from '../../../src/sheet/marks/roll-lines.ts';

function paperOf(top: number, bottom: number, way: { overlapMm: number } | { gapMm: number }): RollPaper {
  const { sector, strip, onceRoundMm } = developBand(
    { topDiameterMm: top, bottomDiameterMm: bottom, heightMm: 120 },
    way,
  );
  return {
    sector,
    stripMm: { width: strip.widthMm, height: strip.heightMm },
    onceRoundMm,
    overlapMm: strip.widthMm - onceRoundMm,
    bleedMm: 2,
  };
}

const linesOf = (paper: RollPaper) =>
  rollLines(paper).map((item) => {
    if (item.kind !== 'line') throw new Error('Expected lines only.');
    return item;
  });

describe('roll lines', () => {
  it('of an arc point at its apex, at both ends, the seam and every quarter', () => {
    const paper = paperOf(90, 70, { overlapMm: 3 });
    const sector = paper.sector!;
    const apex = apexOf(sector);
    const ticks = linesOf(paper).filter(({ from, to }) => {
      const [one, other] = [from, to].map(({ x, y }) => Math.hypot(x - apex.x, y - apex.y));
      return Math.abs(one! - other!) > 3;
    });
    const along = ticks.map(({ from }) => toStrip(sector, from).x);
    for (const { from, to } of ticks) expect(toStrip(sector, to).x).toBeCloseTo(toStrip(sector, from).x, 6);
    const round = Math.PI * 80;
    // Ends, the seam that the overlap covers, three quarters; each above and below.
    const expected = [0, paper.stripMm.width, round, round / 4, round / 2, (3 * round) / 4].flatMap((x) => [
      x,
      x,
    ]);
    expect(along.toSorted((a, b) => a - b).map((x) => x.toFixed(6))).toEqual(
      expected.toSorted((a, b) => a - b).map((x) => x.toFixed(6)),
    );
  });

  it('all lie outside the bleed, by the distance that every mark keeps', () => {
    for (const paper of [
      paperOf(90, 70, { overlapMm: 3 }),
      paperOf(70, 90, { overlapMm: 3 }),
      paperOf(82, 82, { gapMm: 40 }),
    ])
      for (const { from, to } of linesOf(paper))
        for (const point of [from, to]) {
          const { y } = paper.sector ? toStrip(paper.sector, point) : point;
          const beyond = Math.max(-y, y - paper.stripMm.height);
          // The middle of a straight dash lies a hair within its arc.
          expect(beyond).toBeGreaterThanOrEqual(paper.bleedMm + BLEED_GAP_MM - 1e-6);
        }
  });

  it('of a mug stand at quarters counted from its handle', () => {
    const paper = paperOf(82, 82, { gapMm: 40 });
    const xs = new Set(linesOf(paper).map(({ from }) => from.x.toFixed(6)));
    const round = Math.PI * 82;
    const quarters = [1 / 4, 1 / 2, 3 / 4].map((turn) => turn * round - 20);
    expect([...xs].sort()).toEqual([0, round - 40, ...quarters].map((x) => x.toFixed(6)).sort());
  });

  it('take the place of ticks and corners of the box on an arc, and are named where they find no room', () => {
    const paper = paperOf(90, 70, { overlapMm: 3 });
    const outlineMm = { x: 20, y: 60, width: 260, height: 130 };
    const request = {
      pageMm: { width: 420, height: 297 },
      printableMm: { x: 5, y: 5, width: 410, height: 287 },
      pieces: [
        {
          outlineMm,
          bleedMm: outlineMm,
          turn: 0 as const,
          mirrored: true,
          label: ['cup'],
          roll: {
            isArc: true,
            lines: rollLines(paper).map((item) => {
              if (item.kind !== 'line') return item;
              const move = (p: { x: number; y: number }) => ({ x: p.x + 20, y: p.y + 60 });
              return { ...item, from: move(item.from), to: move(item.to) };
            }),
          },
        },
      ],
    };
    const { shown, dropped } = layMarks(request);
    expect(shown.filter(({ mark }) => mark === 'roll-lines').length).toBe(
      request.pieces[0]!.roll.lines.length,
    );
    expect(shown.some(({ mark }) => mark === 'corner-marks' || mark === 'centre-ticks')).toBe(false);
    expect(dropped).toEqual([]);
    const tight = layMarks({ ...request, printableMm: { x: 15, y: 59, width: 270, height: 200 } });
    expect(tight.dropped.filter(({ mark }) => mark === 'roll-lines')).toEqual([
      { mark: 'roll-lines', piece: 0, reason: 'no-room' },
    ]);
  });
});
