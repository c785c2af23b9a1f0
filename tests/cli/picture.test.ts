import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { readPrintRecord } from '../../src/index.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder } from './temp-folder.ts';

/** Red and sharp at 20 mm. */
const ART = makeArt([220, 0, 0], 300);
const WORDS = ['check', 'pear.png', '--blank', '60x60mm', '--width', '20mm', '--offset', '10mm,-5mm'];
const NAME = 'phone/pear.60x60mm.picture.png';

const picture = (cwd: string, name: string) => PNG.sync.read(readFileSync(join(cwd, name)));

/** Box of the pixels that a test takes, in pixels. */
function boxOf({ width, data }: PNG, takes: (r: number, g: number, b: number) => boolean) {
  let [left, top, right, bottom] = [Infinity, Infinity, -1, -1];
  for (let at = 0; at < data.length; at += 4) {
    if (!takes(data[at]!, data[at + 1]!, data[at + 2]!)) continue;
    const [x, y] = [(at / 4) % width, Math.floor(at / 4 / width)];
    [left, right] = [Math.min(left, x), Math.max(right, x + 1)];
    [top, bottom] = [Math.min(top, y), Math.max(bottom, y + 1)];
  }
  return { left, top, right, bottom };
}

describe('--picture', () => {
  it('shows the art on its blank where the numbers say', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const { code, stdout } = await runMain([...WORDS, '--picture', 'phone'], { cwd });
    expect([code, stdout]).toEqual([0, `${NAME}\n`]);
    const png = picture(cwd, NAME);
    expect(png.width).toBe(1080);
    // The blank and its bleed of 3 mm are 66 mm, with 7.5 % of that on each side: 75.9 mm in 1080 px.
    const perMm = 1080 / 75.9;
    const red = boxOf(png, (r, g, b) => r > 200 && g < 40 && b < 40);
    // 20 mm in the middle of 60 mm, moved by 10 mm: from 30 to 50 mm. Half of the line of 10 px round a finding, and one more.
    const near = 6 / perMm;
    const [left, right] = [red.left, red.right].map((px) => px / perMm - 3 - 4.95);
    expect(Math.abs(left! - 30)).toBeLessThan(near);
    expect(Math.abs(right! - 50)).toBeLessThan(near);
    expect(Math.abs((red.bottom - red.top) / perMm - 20)).toBeLessThan(2 * near);
  });

  it('is the same bytes twice, stays unless forced, and is never taken for art', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const words = [...WORDS, '--picture', 'phone'];
    await runMain(words, { cwd });
    const first = readFileSync(join(cwd, NAME));
    const again = await runMain(words, { cwd });
    expect([again.code, again.stderr]).toEqual([1, expect.stringContaining('file-exists')]);
    expect((await runMain([...words, '--force'], { cwd })).code).toBe(0);
    expect(readFileSync(join(cwd, NAME))).toEqual(first);
    expect(readPrintRecord(first)?.kind).toBe('proof');
    const taken = await runMain(['check', NAME, '--blank', '60x60mm', '--json'], { cwd });
    expect(JSON.parse(taken.stdout).results[0].status).toBe('stop');
  });

  it('is told in the report as data, also where it could not be written', async () => {
    const cwd = makeFolder({ 'pear.png': ART, phone: 'a file' });
    const told = async (folder: string) => {
      const { stdout } = await runMain([...WORDS, '--picture', folder, '--json'], { cwd });
      expect(findSchemaFaults(JSON.parse(stdout))).toEqual([]);
      return JSON.parse(stdout).results[0].picture;
    };
    const { width, height } = { width: 1080, height: expect.any(Number) as number };
    expect(await told('there')).toEqual({
      path: 'there/pear.60x60mm.picture.png',
      widthPx: width,
      heightPx: height,
    });
    expect(await told('phone')).toMatchObject({ error: { code: 'cannot-write' } });
  });

  it('shows what cannot be read as such, on the bare blank, in red words', async () => {
    const cwd = makeFolder({ 'torn.png': ART.subarray(0, 90) });
    const { code } = await runMain(['check', 'torn.png', '--blank', 'mug-11oz', '--picture', 'phone'], {
      cwd,
    });
    expect([code, listFiles(cwd)]).toEqual([1, ['phone/torn.mug-11oz.picture.png', 'torn.png']]);
    const red = boxOf(
      picture(cwd, 'phone/torn.mug-11oz.picture.png'),
      (r, g, b) => r === 163 && g === 0 && b === 27,
    );
    expect(red.right).toBeGreaterThan(200);
  });

  it('a dry run draws none', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    await runMain(['pear.png', ...WORDS.slice(2), '--dry-run', '--picture', 'phone'], { cwd });
    expect(listFiles(cwd)).toEqual(['pear.png']);
  });
});
