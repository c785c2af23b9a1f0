import { demoArtwork, paintDemo } from './demo-art.ts';

/** A job as a maker types it, and what it must come to: sizes of the file in pixels are round(mm / 25.4 * 300). */
export interface PlantSaleJob {
  readonly title: string;
  readonly art: () => Promise<Uint8Array>;
  readonly file: string;
  readonly words: readonly string[];
  readonly canvasPx: readonly [number, number];
  /** Middle of the printable face, from the top left of the outline, in mm. */
  readonly middleMm: readonly [number, number];
  readonly mirrored: boolean;
}

const painted = (name: string) => async () => (await paintDemo(demoArtwork(name))).toBuffer();
/** Stored on its side, with the tag that turns it (CIPA DC-008, orientation 6). */
const lyingDown = async () => {
  const marker = await paintDemo(demoArtwork('marker-tomato'));
  const flat = marker.flatten({ background: '#ffffff' }).rotate(270);
  return flat.withMetadata({ orientation: 6 }).jpeg({ quality: 95 }).toBuffer();
};

export const plantSaleJobs: readonly PlantSaleJob[] = [
  {
    title: 'the tile for the potting shed, 7 inches wide',
    art: painted('shed-tile'),
    file: 'shed-tile.png',
    words: ['--blank', 'tile-ceramic-8in', '--width', '7in'],
    canvasPx: [2433, 2433],
    middleMm: [100, 100],
    mirrored: true,
  },
  {
    title: 'a marker on slate, whose coated field is smaller than the stone',
    art: painted('marker-basil'),
    file: 'marker-basil.png',
    words: ['--blank', 'slate-rect-15x20cm'],
    canvasPx: [1724, 2315],
    middleMm: [75, 100],
    mirrored: true,
  },
  {
    title: 'a wreath on a round tag',
    art: painted('tag-wreath'),
    file: 'tag-wreath.png',
    words: ['--blank', 'orn-ceramic-round'],
    canvasPx: [921, 921],
    middleMm: [36, 36],
    mirrored: true,
  },
  {
    title: 'the tile picture behind glass, turned and off the middle',
    art: painted('shed-tile'),
    file: 'shed-tile.png',
    words: [
      '--blank',
      '200x180mm',
      '--surface',
      'second',
      '--turn',
      '180',
      '--width',
      '150mm',
      '--offset',
      '4mm,-3mm',
    ],
    canvasPx: [2433, 2197],
    middleMm: [100, 90],
    mirrored: false,
  },
  {
    title: 'a photograph of a marker that lies on its side',
    art: lyingDown,
    file: 'lying-down.jpg',
    words: ['--blank', '150x200mm', '--height', '180mm'],
    canvasPx: [1843, 2433],
    middleMm: [75, 100],
    mirrored: true,
  },
];
