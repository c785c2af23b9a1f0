import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { row, runNode } from './measure.mjs';
import { benchPictures } from './pictures.mjs';

const SIDE_PX = 20_000;
const here = fileURLToPath(new URL('peak-memory.mjs', import.meta.url));

/**
 * Pictures of 400 megapixels with transparent margins: what their process holds at its peak, all in all. The grainy one is
 * a file of 0.7 GB, which must lie in memory beside its pixels while it is decoded.
 */
export async function bigRows() {
  const rows = [];
  for (const [name, from] of Object.entries(await benchPictures())) {
    const path = join(from, '..', `big-${name}.png`);
    if (!existsSync(path))
      await sharp(from).resize(SIDE_PX, SIDE_PX, { fit: 'fill' }).png({ compressionLevel: 1 }).toFile(path);
    const peakBytes = Number(runNode([here, path, 'big']));
    rows.push(
      row(`${name} of 400 megapixels: GiB of memory at the peak of its process`, peakBytes / 2 ** 30, 2),
    );
  }
  return rows;
}
