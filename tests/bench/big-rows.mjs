import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { row, runNode } from './measure.mjs';
import { benchPictures } from './pictures.mjs';

const SIDE_PX = 20_000;
const command = fileURLToPath(new URL('../../dist/cli/bin.js', import.meta.url));
const tellPeak = new URL('tell-peak.mjs', import.meta.url).href;

/**
 * Pictures of 400 megapixels with transparent margins: what the command holds at its peak, all in all. The grainy one is a
 * file of 0.7 GB, which would be too much beside its pixels.
 */
export async function bigRows() {
  const rows = [];
  for (const [name, from] of Object.entries(await benchPictures())) {
    const path = join(from, '..', `big-${name}.png`);
    if (!existsSync(path))
      await sharp(from).resize(SIDE_PX, SIDE_PX, { fit: 'fill' }).png({ compressionLevel: 1 }).toFile(path);
    rows.push(
      row(`${name} of 400 megapixels: GiB of memory at the peak of its process`, peakOf(path) / 2 ** 30, 2),
    );
  }
  return rows;
}

function peakOf(path) {
  const folder = mkdtempSync(join(tmpdir(), 'blankcheck-big-'));
  const peakFile = join(folder, 'peak');
  const words = ['--blank', 'tile-ceramic-8in', '--width', '178mm', '--limit', `maxPixels=${SIDE_PX ** 2}`];
  try {
    process.env.PEAK_FILE = peakFile;
    runNode(['--import', tellPeak, command, path, ...words, '--out', folder]);
    return Number(readFileSync(peakFile, 'utf8'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
