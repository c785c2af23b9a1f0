import { askWitness } from './witness.ts';

/** Boxes and pixels of the parts that ImageMagick finds in a mask of 0 and 255 (8-connected): `<width>x<height>+<x>+<y> <pixels>`, sorted. */
export function partsByImageMagick(mask: Buffer, widthPx: number, heightPx: number): string[] {
  const define = (what: string) => ['-define', `connected-components:${what}=true`];
  const { stdout, stderr, status } = askWitness(
    'convert',
    [
      ...['-size', `${widthPx}x${heightPx}`, '-depth', '8', 'gray:mask.gray'],
      ...define('verbose'),
      ...define('exclude-header'),
      ...['-connected-components', '8', 'null:'],
    ],
    { 'mask.gray': mask },
  );
  if (status !== 0) throw new Error(String(stderr));
  // `0: 1x3+0+0 0.0,1.0 3 gray(255)`
  return [...String(stdout).matchAll(/: (\S+) \S+ (\d+) gray\(255\)/g)]
    .map(([, box, pixels]) => `${box} ${pixels}`)
    .sort();
}
