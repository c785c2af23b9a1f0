import { existsSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';

const WIDTH = 6000;
const HEIGHT = 4000;

/** Two 24-megapixel RGBA pictures with transparent margins: one photo-like (grain, gradients), one flat. Drawn once. */
export async function benchPictures() {
  const folder = join(tmpdir(), 'blankcheck-bench');
  mkdirSync(folder, { recursive: true });
  const pictures = { photo: join(folder, 'photo.png'), flat: join(folder, 'flat.png') };
  if (!existsSync(pictures.photo)) await save(pictures.photo, paintPhoto);
  if (!existsSync(pictures.flat)) await save(pictures.flat, paintFlat);
  return pictures;
}

async function save(path, paint) {
  const data = Buffer.alloc(WIDTH * HEIGHT * 4);
  const next = seededNumbers(1);
  for (let y = 0; y < HEIGHT; y += 1)
    for (let x = 0; x < WIDTH; x += 1) {
      const distance = ((x - WIDTH / 2) / 2600) ** 2 + ((y - HEIGHT / 2) / 1700) ** 2;
      if (distance < 1) data.set(paint(x, y, distance, next), (y * WIDTH + x) * 4);
    }
  await sharp(data, { raw: { width: WIDTH, height: HEIGHT, channels: 4 } })
    .png()
    .toFile(path);
}

/** Waves of colour with a grain of 12 levels and a soft rim. */
function paintPhoto(x, y, distance, next) {
  const grain = (next() - 0.5) * 12;
  return [
    128 + 90 * Math.sin(x / 310) + grain,
    128 + 90 * Math.sin(y / 270 + x / 900) + grain,
    128 + 80 * Math.cos((x + y) / 400) + grain,
    distance > 0.98 ? (255 * (1 - distance)) / 0.02 : 255,
  ];
}

const FLAT_COLOURS = [
  [200, 30, 40],
  [30, 160, 60],
  [240, 200, 30],
  [20, 60, 160],
  [90, 90, 90],
];

function paintFlat(x, y) {
  return [...FLAT_COLOURS[(Math.floor(x / 400) + Math.floor(y / 400)) % FLAT_COLOURS.length], 255];
}

function seededNumbers(seed) {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
