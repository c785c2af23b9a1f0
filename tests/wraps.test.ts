import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { findBlank } from '../src/catalogue/catalogue.ts';
import type { BlankRecord } from '../src/catalogue/records.ts';
import { checkArtwork, type PrintRequest } from '../src/check-artwork.ts';
import { MM_PER_INCH } from '../src/geometry/length.ts';
import { preflight } from '../src/preflight.ts';
import { prepareArtwork } from '../src/prepare-artwork.ts';
import { parsePaper } from '../src/sheet/parse-paper.ts';
import { artworkOf, paintRaster, type Rgba } from './pictures.ts';
import { askWitness, requireWitness } from './witness.ts';

const TUMBLER = findBlank('tumbler-20oz-tapered')!;
const INVERTED: BlankRecord = {
  ...TUMBLER,
  id: 'upside-down',
  wrap: { ...TUMBLER.wrap!, topDiameterMm: 70, bottomDiameterMm: 89, clearTopMm: 8, clearBaseMm: 12 },
};
const PPI = 300;
const LINES = 12;
const ROWS = 4;
const INK: Rgba = [0, 0, 0, 255];
const PALE: Rgba = [220, 235, 220, 255];

/** Once round the body at mid height, and up its slant, worked here from the record alone. */
function bodyOf({ wrap }: BlankRecord) {
  const { topDiameterMm, bottomDiameterMm, bodyHeightMm, printHeightMm, clearTopMm } = wrap!;
  const radiusAt = (down: number) =>
    (topDiameterMm + ((bottomDiameterMm - topDiameterMm) * down) / bodyHeightMm) / 2;
  const [top, bottom] = [radiusAt(clearTopMm), radiusAt(clearTopMm + printHeightMm)];
  return { top, bottom, height: printHeightMm, slant: Math.hypot(printHeightMm, top - bottom) };
}

/** A grid for the whole band: 12 upright lines and 4 rings, 1 mm wide where the body is as wide as in the middle. */
function gridFor(blank: BlankRecord) {
  const { top, bottom, slant } = bodyOf(blank);
  const round = Math.PI * (top + bottom);
  const perMm = 12;
  const [width, height] = [Math.round(round * perMm), Math.round(slant * perMm)];
  const half = perMm / 2;
  const near = (at: number, step: number) => Math.abs(at - Math.round(at / step) * step) <= half;
  return paintRaster(width, height, (x, y) =>
    near(x + 0.5, width / LINES) || near(y + 0.5, height / ROWS) ? INK : PALE,
  );
}

async function print(blank: BlankRecord, request: Partial<PrintRequest> = {}) {
  const artwork = artworkOf(gridFor(blank));
  const { slant } = bodyOf(blank);
  const asked: PrintRequest = { blank, wrap: { kind: 'around' }, heightMm: slant, ppi: PPI, ...request };
  const checked = await checkArtwork(artwork, asked);
  const bytes = await prepareArtwork(artwork, checked);
  const png = PNG.sync.read(Buffer.from(bytes!));
  return { png, job: checked.job!, plan: checked.plan!, blank: checked.blank };
}

type Vector = readonly [number, number, number];

/** Where a ray from outside first meets the cone x² + y² = (k z)², apex at 0, within heights; solved as a quadratic. */
function meetCone(from: Vector, towards: Vector, k: number, [low, high]: readonly [number, number]): Vector {
  const d: Vector = [towards[0] - from[0], towards[1] - from[1], towards[2] - from[2]];
  const a = d[0] ** 2 + d[1] ** 2 - (k * d[2]) ** 2;
  const b = 2 * (from[0] * d[0] + from[1] * d[1] - k * k * from[2] * d[2]);
  const c = from[0] ** 2 + from[1] ** 2 - (k * from[2]) ** 2;
  const root = Math.sqrt(b * b - 4 * a * c);
  const hits = [(-b - root) / (2 * a), (-b + root) / (2 * a)]
    .sort((one, other) => one - other)
    .map((t): Vector => [from[0] + t * d[0], from[1] + t * d[1], from[2] + t * d[2]]);
  return hits.find(([, , z]) => z >= low - 1e-6 && z <= high + 1e-6)!;
}

/** Darkness at a point of the file as seen from the front, in mm from the middle of its box; bilinear. */
function darknessAt(png: PNG, xMm: number, yMm: number): number {
  const x = png.width / 2 - (xMm / MM_PER_INCH) * PPI - 0.5; // mirrored
  const y = png.height / 2 + (yMm / MM_PER_INCH) * PPI - 0.5;
  const [left, top] = [Math.floor(x), Math.floor(y)];
  const green = (px: number, py: number) => 235 - (png.data[(py * png.width + px) * 4 + 1] ?? 235);
  const [u, v] = [x - left, y - top];
  return Math.max(
    0,
    (green(left, top) * (1 - u) + green(left + 1, top) * u) * (1 - v) +
      (green(left, top + 1) * (1 - u) + green(left + 1, top + 1) * u) * v,
  );
}

/** The middle of the dark line that crosses a stretch of 3 mm, in mm from its middle. */
function findLine(darkness: (offsetMm: number) => number): number {
  let [sum, moment] = [0, 0];
  for (let offset = -1.5; offset <= 1.5; offset += 0.01) {
    const dark = darkness(offset);
    sum += dark;
    moment += dark * offset;
  }
  expect(sum).toBeGreaterThan(235 * 60);
  return moment / sum;
}

describe.each([
  ['wider above', TUMBLER, 'below'],
  ['wider below', INVERTED, 'above'],
] as const)('a body %s', (_, record, opens) => {
  it('bears its grid where rays from a camera meet it, within 0.1 mm', async () => {
    const { png } = await print(record);
    const { top, bottom, height, slant } = bodyOf(record);
    const wide = Math.max(top, bottom);
    const k = Math.abs(top - bottom) / height;
    const heights = [Math.min(top, bottom) / k, wide / k] as const;
    const outer = (slant * wide) / Math.abs(top - bottom);
    const sine = wide / outer;
    const onceRad = 2 * Math.PI * sine;
    // From the record: the overlap is that of the wider end.
    const overlapRad = record.wrap!.overlapMm! / outer;
    const half = (onceRad + overlapRad) / 2;
    const boxHeight = outer - (outer - slant) * Math.cos(half);
    const apexY = opens === 'below' ? outer - boxHeight / 2 : boxHeight / 2 - outer;
    const down = opens === 'below' ? -1 : 1;
    let worst = 0;
    for (let line = 1; line < LINES; line += 1)
      for (const share of [0.08, 0.4, 0.61, 0.93]) {
        const azimuth = (line / LINES) * 2 * Math.PI;
        const z = heights[0] + share * (heights[1] - heights[0]);
        const onBody: Vector = [k * z * Math.cos(azimuth), k * z * Math.sin(azimuth), z];
        const camera: Vector = [300 * Math.cos(azimuth + 0.3), 300 * Math.sin(azimuth + 0.3), z + 20];
        const hit = meetCone(camera, onBody, k, heights);
        const turned = (Math.atan2(hit[1], hit[0]) + 2 * Math.PI) % (2 * Math.PI);
        const radius = Math.hypot(...hit);
        const theta = turned * sine - half;
        const offset = findLine((mm) => {
          const angle = theta + mm / radius;
          return darknessAt(png, radius * Math.sin(angle), apexY + down * radius * Math.cos(angle));
        });
        worst = Math.max(worst, Math.abs(offset));
      }
    expect(worst).toBeLessThan(0.1);
  });

  it('closes its seam within 0.1 mm at rim and foot', async () => {
    const { png, blank } = await print(record);
    const { sector } = blank.wrap!.development;
    const { top, bottom } = bodyOf(record);
    const { outerRadiusMm, innerRadiusMm, angleRad } = sector!;
    const boxHeight = outerRadiusMm - innerRadiusMm * Math.cos(angleRad / 2);
    const apexY = opens === 'below' ? outerRadiusMm - boxHeight / 2 : boxHeight / 2 - outerRadiusMm;
    const down = opens === 'below' ? -1 : 1;
    for (const [radius, round] of [
      [outerRadiusMm - 0.7, Math.max(top, bottom)],
      [innerRadiusMm + 0.7, Math.min(top, bottom)],
    ] as const) {
      const read = (angle: number) =>
        darknessAt(png, radius * Math.sin(angle), apexY + down * radius * Math.cos(angle));
      // The ring along rim and foot is half a line wide: 0.7 mm in, only upright lines are dark.
      const bodyRound =
        2 * Math.PI * (round * (radius / (round === Math.max(top, bottom) ? outerRadiusMm : innerRadiusMm)));
      const second = -angleRad / 2 + bodyRound / LINES / radius;
      const last = -angleRad / 2 + bodyRound / radius;
      const from = second + findLine((mm) => read(second + mm / radius)) / radius;
      const to = last + findLine((mm) => read(last + mm / radius)) / radius;
      // From the first line after the seam to the line of the seam itself, which the overlap repeats: 11 of 12 parts.
      expect(Math.abs((to - from) * radius - (bodyRound * (LINES - 1)) / LINES)).toBeLessThan(0.1);
    }
  });
});

describe('the page of a tapered tumbler, rendered by another program', () => {
  it('closes its seam within 0.1 mm at rim and foot', async (context) => {
    requireWitness(context, 'pdftoppm');
    const { slant, top, bottom } = bodyOf(TUMBLER);
    const grid = gridFor(TUMBLER);
    const png = new PNG({ width: grid.widthPx, height: grid.heightPx });
    png.data = Buffer.from(grid.data.buffer);
    const art = PNG.sync.write(png);
    const { report, printReady } = await preflight(
      { path: 'grid.png', bytes: art },
      { blank: TUMBLER, wrap: { kind: 'around' }, heightMm: slant, sheet: parsePaper('a4') },
      { write: true, anyway: true, format: 'pdf' },
    );
    const dpi = 600;
    const page = askWitness('pdftoppm', ['-gray', '-r', `${dpi}`, 'page.pdf'], {
      'page.pdf': printReady!.bytes,
    });
    const [, width = '0', height = '0'] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(
      page.stdout.toString('latin1', 0, 40),
    )!;
    const samples = page.stdout.subarray(page.stdout.length - Number(width) * Number(height));
    const { bleedMm } = report.sheet!.pieces[0]!;
    const middle = { x: bleedMm.x + bleedMm.width / 2, y: bleedMm.y + bleedMm.height / 2 };
    const dark = (xMm: number, yMm: number) => {
      const x = Math.floor(((middle.x - xMm) / MM_PER_INCH) * dpi);
      const y = Math.floor(((middle.y + yMm) / MM_PER_INCH) * dpi);
      return Math.max(0, 228 - samples[y * Number(width) + x]!);
    };
    const outer = (slant * top) / (top - bottom);
    const sine = top / outer;
    const half = (2 * Math.PI * sine + TUMBLER.wrap!.overlapMm! / outer) / 2;
    const apexY = outer - (outer - (outer - slant) * Math.cos(half)) / 2;
    for (const [radius, round] of [
      [outer - 0.8, 2 * Math.PI * top * ((outer - 0.8) / outer)],
      [outer - slant + 0.8, 2 * Math.PI * bottom * ((outer - slant + 0.8) / (outer - slant))],
    ] as const) {
      const line = (number: number) => {
        const angle = (number / LINES) * 2 * Math.PI * sine - half;
        const offset = findLine((mm) => {
          const at = angle + mm / radius;
          return dark(radius * Math.sin(at), apexY - radius * Math.cos(at));
        });
        return angle * radius + offset;
      };
      // Eleven twelfths of the way round lie between the first line and that of the seam, which the overlap repeats.
      expect(Math.abs(line(LINES) - line(1) - (round * (LINES - 1)) / LINES)).toBeLessThan(0.1);
    }
  });
});

describe('the flat paper in the plan', () => {
  it('is the box of the sector at 300 ppi', async () => {
    const { png, plan } = await print(TUMBLER);
    expect([plan.widthMm, plan.heightMm].map((mm) => Math.round(mm * 10))).toEqual([2765, 1508]);
    expect([png.width, png.height]).toEqual([3266, 1781]);
  });

  it('judges the resolution where the body is widest', async () => {
    const { job } = await print(TUMBLER);
    const { top, bottom } = bodyOf(TUMBLER);
    const atMiddle = (job.contentBoxPx.width * MM_PER_INCH) / job.placementMm.width;
    expect(job.effectivePpi.x).toBeCloseTo((atMiddle * (top + bottom)) / (2 * top), 6);
    expect(job.effectivePpi.y).toBeCloseTo(
      (job.contentBoxPx.height * MM_PER_INCH) / job.placementMm.height,
      6,
    );
  });
});
