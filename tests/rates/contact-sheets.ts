import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type OverlayOptions } from 'sharp';
import type { RectPx } from '../../src/geometry/rectangle.ts';
import { cropRaster } from '../../src/raster/crop.ts';
import { channelsOf, type Raster } from '../../src/raster/raster.ts';
import type { Seen } from './count-real.ts';

const CELL_PX = 230;
const ACROSS = 6;
const DOWN = 4;

/** Where a picture has what was found, as `check/code`. */
export type Places = Readonly<Record<string, RectPx>>;

/** Every so many pictures in which nothing was found are shown. */
const SILENT_EVERY = 7;
/** Faults of a few pixels are shown with so many around them. */
const AROUND_PX = 24;
const SMALL = new Set([
  'thin-detail',
  'edge-fringe',
  'stray-pixels',
  'hollow-alpha',
  'cut-off-edge',
  'alpha-haze',
]);

/** Contact sheets of pictures by what was found, in a folder: `<check>.<code>-<n>.png` and a list of names beside each. */
export function makeSheets(folder: string) {
  mkdirSync(folder, { recursive: true });
  const open = new Map<
    string,
    { readonly cells: OverlayOptions[]; readonly names: string[]; count: number }
  >();

  let silent = 0;

  async function put(title: string, name: string, raster: Raster): Promise<void> {
    const sheet = open.get(title) ?? { cells: [], names: [], count: 0 };
    open.set(title, sheet);
    const at = sheet.cells.length;
    sheet.names.push(`${at + 1} ${name}`);
    sheet.cells.push({
      input: await thumb(title.endsWith('/veil') ? strengthen(raster) : raster),
      left: (at % ACROSS) * CELL_PX,
      top: Math.floor(at / ACROSS) * CELL_PX,
    });
    if (sheet.cells.length === ACROSS * DOWN) await write(title);
  }

  async function write(title: string): Promise<void> {
    const { cells, names, count } = open.get(title)!;
    open.set(title, { cells: [], names: [], count: count + 1 });
    if (cells.length === 0) return;
    const file = join(folder, `${title.replace('/', '.')}-${count + 1}`);
    const size = {
      width: ACROSS * CELL_PX,
      height: DOWN * CELL_PX,
      channels: 3,
      background: '#999',
    } as const;
    await sharp({ create: size }).composite(cells).png().toFile(`${file}.png`);
    writeFileSync(`${file}.txt`, `${names.join('\n')}\n`);
  }

  return {
    async add({ name, planted, found }: Seen, raster: Raster, places: Places): Promise<void> {
      for (const code of found) {
        const [check, own] = code.split('/') as [string, string];
        if (planted?.codes.includes(own)) continue;
        if (code !== 'marked-preview/preview-sized') await put(code, name, raster);
        if (SMALL.has(check) && places[code])
          await put(code, `${name}, its place`, closeUp(raster, places[code]));
      }
      if (planted && !planted.codes.some((code) => found.includes(`${planted.check}/${code}`)))
        await put(`planted-missed/${planted.check}`, `${planted.name}: ${name}`, raster);
      // Nearly all art of these packages is small: that says nothing of the other checks.
      if (!planted && found.every((code) => code === 'marked-preview/preview-sized')) {
        if (silent % SILENT_EVERY === 0) await put('silent/all', name, raster);
        silent += 1;
      }
    },
    async finish(): Promise<void> {
      for (const title of open.keys()) await write(title);
    },
  };
}

/** Over white in the upper left half, over mid gray in the other: what is faint shows on one of them. */
async function thumb(raster: Raster): Promise<Buffer> {
  const data = raster.depth === 8 ? raster.data : Uint8Array.from(raster.data, (v) => v >> 8);
  const channels = channelsOf(raster) as 1 | 2 | 3 | 4;
  const size = CELL_PX - 6;
  const art = await sharp(Buffer.from(data.buffer, data.byteOffset, data.length), {
    raw: { width: raster.widthPx, height: raster.heightPx, channels },
  })
    .resize(size, size, { fit: 'inside', kernel: raster.widthPx < size ? 'nearest' : 'lanczos3' })
    .png()
    .toBuffer();
  const ground = Buffer.from(
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size}" height="${size}"><rect width="100%" height="100%" fill="#fff"/><path d="M${size} 0V${size}H0z" fill="#6f7f8f"/></svg>`,
  );
  return sharp(ground)
    .composite([{ input: art }])
    .png()
    .toBuffer();
}

/** The place of a fault and what lies around it. */
function closeUp(raster: Raster, { x, y, width, height }: RectPx): Raster {
  const [left, top] = [x, y].map((at) => Math.max(0, Math.floor(at) - AROUND_PX)) as [number, number];
  const right = Math.min(raster.widthPx, Math.ceil(x + width) + AROUND_PX);
  const bottom = Math.min(raster.heightPx, Math.ceil(y + height) + AROUND_PX);
  return cropRaster(raster, { x: left, y: top, width: right - left, height: bottom - top });
}

/** What is hardly seen: alpha times 20, black. */
function strengthen(raster: Raster): Raster {
  const channels = channelsOf(raster);
  if (!raster.hasAlpha || raster.depth !== 8) return raster;
  const data = new Uint8Array(raster.data.length);
  for (let at = channels - 1; at < data.length; at += channels)
    data[at] = Math.min(255, 20 * raster.data[at]!);
  return { ...raster, data };
}
