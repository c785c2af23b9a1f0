import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { writeZip } from '../../fixtures/byte-writers/write-zip.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, putFiles } from './temp-folder.ts';

const SMALL = makeArt([40, 120, 60], 20);
const LARGE = makeArt([90, 20, 60], 24);
const RENAMED = makeArt([20, 90, 70], 22);
const CUT_OFF = LARGE.subarray(0, 60);
const OPTIONS = ['--blank', '60x60mm', '--width', '2mm', '--out', 'out'];

const pack = (files: Readonly<Record<string, Uint8Array>>) =>
  writeZip(Object.entries(files).map(([name, content]) => ({ name, content })));
/** `.webp` and `.gif` are names only: what a file is, its content says. */
const PACK = pack({ 'bean.png': SMALL, 'bean.webp': LARGE, 'pea.png': CUT_OFF, 'pea.gif': CUT_OFF });

async function run(cwd: string, words: readonly string[]) {
  const { code, stdout, stderr } = await runMain([...words, ...OPTIONS, '--json'], { cwd });
  return { code, stderr, text: stdout, report: JSON.parse(stdout) };
}

describe('a ZIP with several formats of one artwork', () => {
  it('is reported as its best alone would be, and says instead of what', async () => {
    const cwd = makeFolder({ 'pack.zip': PACK, 'bean.webp': LARGE });
    const { code, report, stderr } = await run(cwd, ['pack.zip']);
    expect(code).toBe(1);
    expect(findSchemaFaults(report)).toEqual([]);
    expect(report.summary).toMatchObject({ artworks: 2, ready: 1, unreadable: 1, passedOver: 0 });
    const [bean, pea] = report.results;
    expect(bean.artwork).toMatchObject({ path: 'pack.zip/bean.webp', widthPx: 24, insteadOf: ['bean.png'] });
    expect(pea.artwork).toMatchObject({ path: 'pack.zip/pea.png', insteadOf: ['pea.gif'] });
    expect([pea.status, pea.error.code]).toEqual(['unreadable', 'damaged']);
    expect(stderr.match(/Instead of +(?:bean\.png|pea\.gif)/g)).toHaveLength(2);
    const alone = (await run(cwd, ['bean.webp'])).report.results[0];
    expect(alone.artwork).not.toHaveProperty('insteadOf');
    for (const part of ['status', 'outcomes', 'plan', 'placementMm', 'contentBoxPx'])
      expect(bean[part]).toEqual(alone[part]);
    const print = (name: string) => readFileSync(join(cwd, 'out', name));
    expect(print('pack.bean.60x60mm.png')).toEqual(print('bean.60x60mm.png'));
  });

  it('is told on the page too', async () => {
    const cwd = makeFolder({ 'pack.zip': PACK });
    await runMain(['check', 'pack.zip', '--blank', '60x60mm', '--report', 'page.html'], { cwd });
    const page = readFileSync(join(cwd, 'page.html'), 'utf8');
    expect(['bean.png', 'pea.gif'].filter((name) => page.includes(name))).toEqual(['bean.png', 'pea.gif']);
  });

  it('is unchanged in a second run, and done anew when another of them is the best', async () => {
    const cwd = makeFolder({ 'pack.zip': pack({ 'bean.png': SMALL, 'bean.webp': LARGE }) });
    const first = await run(cwd, ['pack.zip']);
    const second = await run(cwd, ['pack.zip']);
    expect(second.text).toBe(first.text);
    expect(second.stderr).toMatch(/1 artwork is unchanged/);
    putFiles(cwd, { 'pack.zip': pack({ 'bean.png': RENAMED, 'bean.webp': LARGE }) });
    expect((await run(cwd, ['pack.zip'])).stderr).not.toMatch(/unchanged/);
    putFiles(cwd, { 'pack.zip': pack({ 'bean.png': makeArt([1, 9, 90], 30), 'bean.webp': LARGE }) });
    const { code, report } = await run(cwd, ['pack.zip']);
    expect([code, report.results[0].artwork.path]).toEqual([0, 'pack.zip/bean.png']);
    expect(listFiles(cwd).filter((name) => name.endsWith('.png'))).toEqual(['out/pack.bean.60x60mm.png']);
  });

  it('is told of by suits as well, by the same choice', async () => {
    const cwd = makeFolder({ 'pack.zip': pack({ 'bean.png': SMALL, 'bean.webp': LARGE }) });
    const { stdout } = await runMain(['suits', 'pack.zip', '--json'], { cwd });
    const artworks = JSON.parse(stdout).results.map(({ artwork }: { artwork: unknown }) => artwork);
    expect(JSON.stringify(artworks)).toContain('pack.zip/bean.webp');
    expect(artworks).toHaveLength(1);
  });

  it('lies on a sheet as its best alone would, in as many copies, and what cannot be read is left out', async () => {
    const cwd = makeFolder({ 'pack.zip': PACK, 'bean.webp': LARGE });
    const page = ['--sheet', 'a5', '--copies', '3', '--format', 'png', '--omit-marks', 'label'];
    const packed = await run(cwd, ['sheet', 'pack.zip', ...page]);
    expect([packed.code, findSchemaFaults(packed.report)]).toEqual([1, []]);
    expect(packed.report.summary).toMatchObject({ artworks: 2, ready: 1, unreadable: 1, passedOver: 0 });
    const [bean, pea] = packed.report.results;
    expect(bean.artwork).toMatchObject({ path: 'pack.zip/bean.webp', insteadOf: ['bean.png'] });
    expect(pea.artwork).toMatchObject({ insteadOf: ['pea.gif'], unreadableBeside: ['pea.gif'] });
    expect(packed.report.leftOut).toEqual([
      { artwork: 'pack.zip/pea.png', blank: '60x60mm', reason: 'unreadable', copies: 3 },
    ]);
    const alone = await run(cwd, ['sheet', 'bean.webp', ...page]);
    expect(alone.code).toBe(0);
    const pagesOf = ({ sheets }: { sheets: { pieces: unknown[]; output: { path: string } }[] }) =>
      sheets.map(({ pieces, output }) => [pieces.length, readFileSync(join(cwd, output.path), 'base64')]);
    expect(pagesOf(packed.report)).toEqual(pagesOf(alone.report));
    expect(pagesOf(packed.report).reduce((count, [pieces]) => count + Number(pieces), 0)).toBe(3);
  });

  it('is no single picture, as a piece of a job has', async () => {
    const job = JSON.stringify({ pieces: [{ art: 'pack.zip', blank: '60x60mm' }] });
    const cwd = makeFolder({ 'pack.zip': PACK, 'tags.job.json': job });
    const { stdout } = await runMain(['sheet', '--job', 'tags.job.json', '--sheet', 'a5', '--json'], { cwd });
    const [{ error }] = JSON.parse(stdout).results;
    expect(error.code).toBe('unsupported-format');
  });
});
