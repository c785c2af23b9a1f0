import { readFileSync } from 'node:fs';
import { PNG } from 'pngjs';
import { expect, it } from 'vitest';
import { blankFromSize, preflight } from '../../src/index.ts';
import { jobByImageMagick, meanDifference } from '../job-by-imagemagick.ts';
import { requireCorpus, requireWitness } from '../witness.ts';

const AT_MOST = 600;
/** A square of 30 mm with 3 mm of bleed at 300 ppi: round(36 / 25.4 * 300). */
const CANVAS_PX = 425;

it('crops, scales, mirrors and pads real art as ImageMagick does', { timeout: 600_000 }, async (context) => {
  const folder = process.env.BLANKCHECK_REAL_ART;
  if (folder === undefined) return context.skip('BLANKCHECK_REAL_ART names no folder of real art');
  requireWitness(context, 'convert');
  const all = requireCorpus(context, folder, '.png');
  const every = Math.max(1, Math.floor(all.length / AT_MOST));
  const blank = blankFromSize('30x30mm');
  const wrong: { path: string; here: number; moved: number }[] = [];
  let compared = 0;
  for (const path of all.filter((_, i) => i % every === 0)) {
    const bytes = readFileSync(path);
    const { report, printReady } = await preflight({ path, bytes }, { blank }, { write: true });
    // Art that is enlarged is left out: the two programs have different kernels for that.
    if (printReady === null || report.effectivePpi!.x < 300) continue;
    const picture = PNG.sync.read(Buffer.from(printReady.bytes));
    expect([picture.width, picture.height]).toEqual([CANVAS_PX, CANVAS_PX]);
    const job = {
      file: 'art.png',
      bytes,
      canvasPx: [CANVAS_PX, CANVAS_PX],
      mirrored: true,
      turnedBy: 0,
    } as const;
    const theirs = jobByImageMagick(job, report);
    const [here = 0, ...moved] = [0, -1, 1, -CANVAS_PX, CANVAS_PX].map((shift) =>
      meanDifference(picture.data, theirs, shift),
    );
    compared += 1;
    if (here > 1 || here > Math.min(...moved)) wrong.push({ path, here, moved: Math.min(...moved) });
  }
  expect(wrong).toEqual([]);
  expect(compared).toBeGreaterThan(0);
});
