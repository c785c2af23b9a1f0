import { describe, expect, it } from 'vitest';
import { takeGamutCensus } from '../../src/checks/gamut-census.ts';
import { gamutTableOf } from '../../src/conditions/colour-tables.ts';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { readPrintRecord } from '../../src/formats/print-record.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { paintRgb } from '../checks/colour-jobs.ts';
import { DISC, PLATE } from '../checks/jobs.ts';
import { CLEAR, paintRaster } from '../pictures.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { type DrawnProof, drawProofOf } from './proof-jobs.ts';

const EARTH = [120, 95, 75] as const;
const earth = paintRgb(60, 60, () => EARTH);

/** Where along a ray from the middle the alpha falls below half, in mm, to a tenth of a pixel. */
function edgeAlong(proof: DrawnProof, angle: number, from: number, to: number): number {
  const alpha = (mm: number) => proof.at(50 + mm * Math.cos(angle), 50 + mm * Math.sin(angle))[3]!;
  const inside = alpha(from) > 127;
  for (let mm = from; mm < to; mm += 0.01) if (alpha(mm) > 127 !== inside) return mm;
  return Number.NaN;
}

describe('outline and holes of a proof', () => {
  it('the outline of a disc lies within half a pixel of its place all round, with a smooth edge', async () => {
    const proof = await drawProofOf(earth, { blank: DISC });
    for (let degrees = 0; degrees < 360; degrees += 7) {
      // A pixel is 0.1 mm, and a ray may cross its corner: half a diagonal.
      const edge = edgeAlong(proof, (degrees / 180) * Math.PI, 45, 52);
      expect(Math.abs(edge - 50)).toBeLessThan(0.0708);
    }
    const alphas = new Set(proof.pixels.data.filter((_, i) => i % 4 === 3));
    expect(alphas.size).toBeGreaterThan(20);
  });

  it('a hole is cut, wherever it is, and shows nothing', async () => {
    const hole = { use: 'hanging', shape: 'circle', xMm: 30, yMm: 20, diameterMm: 6 } as const;
    const proof = await drawProofOf(earth, { blank: { ...PLATE, holes: [hole] } });
    expect(proof.at(30, 20)).toEqual([0, 0, 0, 0]);
    expect(proof.at(32.85, 20)[3]).toBe(0);
    expect(proof.at(33.15, 20)[3]).toBe(255);
    // Both edges of the hole, counted in covered area: pi x 3 mm squared within 1 %.
    let missing = 0;
    for (let y = 15; y < 25; y += 0.1)
      for (let x = 25; x < 35; x += 0.1) missing += 255 - proof.at(x + 0.05, y + 0.05)[3]!;
    expect(missing / 255 / 100 / (Math.PI * 9)).toBeCloseTo(1, 2);
  });

  it('beyond the printable edge the base is bare, and the bleed falls beside the blank', async () => {
    const printable = { shape: 'rect', widthMm: 80, heightMm: 90 } as const;
    const proof = await drawProofOf(earth, { blank: { ...PLATE, baseColour: '#dec2a0', printable } });
    const wood = [0xde, 0xc2, 0xa0, 255];
    expect(proof.at(9.85, 50)).toEqual(wood);
    expect(proof.at(90.15, 50)).toEqual(wood);
    expect(proof.at(50, 4.85)).toEqual(wood);
    expect(proof.at(10.15, 50)).not.toEqual(wood);
    expect(proof.at(50, 5.15)).not.toEqual(wood);
    expect(proof.at(-0.15, 50)[3]).toBe(0);
    expect(proof.at(100.15, 50)[3]).toBe(0);
  });

  it('a smooth rim shows no bare fringe where dye runs over it', async () => {
    const proof = await drawProofOf(earth, { blank: DISC });
    const [r, g, b] = proof.at(50, 50);
    for (let i = 0; i < proof.pixels.data.length / 4 && i < proof.pixels.width * 1060; i += 1) {
      const [pr, pg, pb, alpha] = proof.pixels.data.subarray(4 * i, 4 * i + 4);
      if (alpha! > 0) expect([pr, pg, pb]).toEqual([r, g, b]);
    }
  });
});

describe('marks of a proof', () => {
  // Vivid spots that are a pixel, a row and a block, earth between them, and vivid colour hidden under clear pixels.
  const art = paintRaster(400, 400, (x, y) => {
    if (x < 20) return [0, 255, 0, 0];
    if ((x === 50 && y === 50) || y === 200 || (x > 250 && x < 330 && y > 300)) return [0, 255, 0, 255];
    return [...EARTH, 255];
  });

  it('are the pixels that the gamut check counts, one by one, striped in two tones that no colour hides', async () => {
    const request = { widthMm: 38, heightMm: 40 };
    const plain = await drawProofOf(art, request);
    const marked = await drawProofOf(art, { ...request, mark: true });
    const { profile } = await loadCondition('coated-reference');
    const cropped = paintRaster(
      380,
      400,
      (x, y) => [...art.data.subarray(4 * (y * 400 + x + 20), 4 * (y * 400 + x + 20) + 4)] as never,
    );
    const { overPixels, mask } = takeGamutCensus(cropped, gamutTableOf(profile, SRGB_PROFILE));
    let differing = 0;
    const tones = new Set<string>();
    for (let y = 0; y < 400; y += 1)
      for (let x = 0; x < 380; x += 1) {
        const place = [31 + (x + 0.5) / 10, 30 + (y + 0.5) / 10] as const;
        const [before, after] = [plain.at(...place), marked.at(...place)];
        const differs = before.join() !== after.join();
        expect(differs).toBe(mask[y * 380 + x] === 1);
        if (differs) {
          differing += 1;
          tones.add(after.join());
        }
      }
    expect(differing).toBe(overPixels);
    expect([...tones].sort()).toEqual(['0,0,0,255', '255,255,255,255']);
    expect(marked.marked).toBe(true);
  });

  it('change nothing where all can be printed', async () => {
    const plain = await drawProofOf(earth);
    const marked = await drawProofOf(earth, { mark: true });
    const rows = 4 * plain.pixels.width * 1060;
    expect(marked.pixels.data.subarray(0, rows)).toEqual(plain.pixels.data.subarray(0, rows));
  });
});

describe('the file of a proof', () => {
  it('is the same bytes from the same input, with its density, the profile of sRGB and its record', async (context) => {
    const proof = await drawProofOf(earth);
    expect(Buffer.from((await drawProofOf(earth)).bytes).equals(proof.bytes)).toBe(true);
    expect(readPrintRecord(proof.bytes)).toMatchObject({ kind: 'proof', blankId: 'test-plate', ppi: 254 });
    requireWitness(context, 'exiftool', 'pngcheck');
    const check = askWitness('pngcheck', ['-q', 'proof.png'], { 'proof.png': proof.bytes });
    expect([check.status, check.stdout.toString()]).toEqual([0, '']);
    const { stdout } = askWitness(
      'exiftool',
      ['-s3', '-n', '-PixelsPerUnitX', '-ProfileDescription', '-warning', 'proof.png'],
      {
        'proof.png': proof.bytes,
      },
    );
    expect(stdout.toString().trim().split('\n')).toEqual(['10000', 'sRGB IEC61966-2.1']);
  });

  it('says what it is below the blank, in black on white, at any resolution', async () => {
    for (const ppi of [20, 72, 300]) {
      const proof = await drawProofOf(earth, {
        ppi,
        blank: { ...PLATE, outline: { shape: 'rect', widthMm: 20, heightMm: 20 } },
      });
      const { data, width, height } = proof.pixels;
      const first = proof.pixels.height - Math.round(height / 4);
      const strip = data.subarray(4 * first * width);
      const dark = strip.filter((code, i) => i % 4 === 0 && code < 64).length;
      expect(dark / (strip.length / 4)).toBeGreaterThan(0.01);
      expect(strip.every((code, i) => i % 4 !== 3 || code === 255)).toBe(true);
    }
  });

  it('nothing of hidden colours shows', async () => {
    const proof = await drawProofOf(paintRaster(50, 50, (x) => (x < 25 ? [255, 0, 0, 0] : [0, 0, 0, 255])));
    expect(CLEAR[3]).toBe(0);
    expect(proof.at(95, 50)[0]).toBeLessThan(60);
  });
});
