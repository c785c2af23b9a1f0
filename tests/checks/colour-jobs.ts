import { checkArtwork } from '../../src/check-artwork.ts';
import type { Finding, Outcome } from '../../src/checks/finding.ts';
import type { PrintingCondition } from '../../src/conditions/printing-condition.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import { createRaster, type Raster } from '../../src/raster/raster.ts';
import { artworkOf } from '../pictures.ts';
import { PLATE } from './jobs.ts';

/** Ten pixels a millimetre, so that 100 px are 1 mm2. */
const PPI = 254;

/** What the checks of colours say of a picture that is printed at its own pixels, 0.1 mm each. */
export async function judgeColours(
  raster: Raster,
  { condition, ...changes }: Partial<Artwork> & { readonly condition?: PrintingCondition } = {},
): Promise<{ readonly gamut: Outcome; readonly dark: Outcome }> {
  const { outcomes } = await checkArtwork(artworkOf(raster, changes), {
    blank: PLATE,
    ppi: PPI,
    widthMm: raster.widthPx / 10,
    ...(condition && { condition }),
  });
  const of = (id: string) => outcomes.find(({ check }) => check === id)!;
  return { gamut: of('gamut'), dark: of('dark-coverage') };
}

/** Opaque 8-bit pixels of known colours. */
export function paintRgb(
  widthPx: number,
  heightPx: number,
  paint: (x: number, y: number) => readonly [number, number, number],
): Raster {
  const raster = createRaster({ widthPx, heightPx, model: 'rgb', hasAlpha: false, depth: 8 });
  for (let y = 0; y < heightPx; y += 1)
    for (let x = 0; x < widthPx; x += 1) raster.data.set(paint(x, y), (y * widthPx + x) * 3);
  return raster;
}

/** The same picture with 16 bits a sample. */
export function deepen(raster: Raster): Raster {
  return { ...raster, depth: 16, data: Uint16Array.from(raster.data, (code) => code * 257) };
}

export const codesOf = (outcome: Outcome): readonly string[] =>
  outcome.status === 'found' ? outcome.findings.map(({ code, severity }) => `${code}:${severity}`) : [];

/** The one finding of an outcome. */
export function onlyFinding(outcome: Outcome): Finding {
  if (outcome.status !== 'found' || outcome.findings.length !== 1)
    throw new Error(`Expected one finding, received ${JSON.stringify(outcome)}`);
  return outcome.findings[0]!;
}

/** The facts of an outcome with at most one finding. */
export function factsOf(outcome: Outcome) {
  if (outcome.status === 'passed') return outcome.facts ?? {};
  return onlyFinding(outcome).facts;
}
