import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { deltaE2000 } from '../../src/colour/delta-e-2000.ts';
import { loadCondition } from '../../src/conditions/load-condition.ts';
import { makeGamutTable } from '../../src/icc/gamut-table.ts';
import { toLabD50 } from '../../src/icc/lab-d50.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import type { RunReport } from '../../src/index.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';
import { codesOf, RGB_TABLE, rgbArt } from '../own-colours/jobs.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder } from './temp-folder.ts';

/** 300 ppi at 8 mm: more than 25 mm2 of a green that no ink makes. */
const VIVID = makeArt([0, 230, 40], 96);
const WORDS = ['bed.png', '--blank', '40x40mm', '--width', '8mm'];
const MEND = [...WORDS, '--mend', 'into-gamut'];

async function reportOf(argv: readonly string[], cwd: string) {
  const { code, stdout } = await runMain([...argv, '--json', '--fail-on', 'never'], { cwd });
  const report = JSON.parse(stdout) as RunReport;
  expect(findSchemaFaults(report)).toEqual([]);
  return { code, result: report.results[0]! };
}
/** Tags of the table of tags whose names begin so get another, which nobody knows. */
function renameTags(profile: Uint8Array, from: string, to: string): Buffer {
  const renamed = Buffer.from(profile);
  for (let at = renamed.indexOf(from); at >= 0 && at < 512; at = renamed.indexOf(from)) renamed.write(to, at);
  return renamed;
}
const gamutOf = ({ outcomes }: RunReport['results'][number]) =>
  outcomes.find(({ check }) => check === 'gamut')!;
const middleOf = (cwd: string, path: string) => {
  const { data, width, height } = PNG.sync.read(readFileSync(join(cwd, path)));
  const at = 4 * (width * (height >> 1) + (width >> 1));
  return [...data.subarray(at, at + 3)];
};
const labOf = (rgb: readonly number[]) =>
  toLabD50(
    SRGB_PROFILE,
    rgb.map((code) => code / 255),
    { intent: 'relative' },
  );

describe('--mend into-gamut', () => {
  it('is off unless asked for: the colour is found, and handed on as it is', async () => {
    const cwd = makeFolder({ 'bed.png': VIVID });
    const { result } = await reportOf(WORDS, cwd);
    expect(gamutOf(result)).toMatchObject({ status: 'found', findings: [{ code: 'out-of-gamut' }] });
    expect(result.mends).toEqual([]);
    expect(middleOf(cwd, result.output!.path)).toEqual([0, 230, 40]);
  });

  it('brings it inside, and says in mends what was changed: by how much, how large, why', async () => {
    const cwd = makeFolder({ 'bed.png': VIVID });
    const { result } = await reportOf(MEND, cwd);
    expect(gamutOf(result).status).toBe('passed');
    const found = middleOf(cwd, result.output!.path);
    const { profile } = await loadCondition('coated-reference');
    const { limit, measure } = makeGamutTable(profile);
    expect(measure(found.map((code) => code / 255))).toBeLessThanOrEqual(limit);
    const [entry] = result.mends;
    expect(result.mends).toHaveLength(1);
    expect(entry).toMatchObject({
      mend: 'into-gamut',
      pixels: 96 * 96,
      largestAlpha: 0,
      mended: ['gamut/out-of-gamut'],
    });
    expect(entry!.areaMm2).toBeCloseTo(64, 3);
    expect(entry!.largestDeltaE00).toBeCloseTo(deltaE2000(labOf([0, 230, 40]), labOf(found)), 2);
    expect(readFileSync(join(cwd, 'bed.png')).equals(Buffer.from(VIVID))).toBe(true);
  });

  it('is told to people too, with its dE00', async () => {
    const cwd = makeFolder({ 'bed.png': VIVID });
    const { result } = await reportOf([...MEND, '--dry-run'], cwd);
    const { stderr } = await runMain([...MEND, '--dry-run'], { cwd });
    expect(stderr).toContain('into-gamut');
    expect(stderr).toMatch(new RegExp(`${Math.floor(result.mends[0]!.largestDeltaE00)}(\\.\\d+)? dE00`));
  });

  it.each([
    ['a condition without a way to its inks', ['B2A', 'xxx'], /B2A/],
    ['a condition without a way back', ['A2B', 'xxx'], /A2B/],
  ] as const)('%s is refused before a picture is read', async (_, [from, to], words) => {
    const cwd = makeFolder({ 'bed.png': VIVID, 'mine.icc': renameTags(COATED_REFERENCE, from, to) });
    const { code, stdout, stderr } = await runMain([...MEND, '--condition', 'mine.icc'], { cwd });
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toMatch(words);
    expect(stderr).toContain('mine.icc');
  });

  // There is a way back from every working picture: art in a space that has none is read into one that has.
  it('mends art in a space of tables without a way back', async () => {
    const oneWay = renameTags(RGB_TABLE, 'B2A', 'xxx');
    const cwd = makeFolder({ 'bed.png': rgbArt(oneWay, codesOf(3)) });
    const words = ['bed.png', '--blank', '40x40mm', '--width', '30mm', '--anyway'];
    const before = await reportOf(words, cwd);
    expect(gamutOf(before.result).status).toBe('found');
    const { result } = await reportOf([...words, '--mend', 'into-gamut', '--force'], cwd);
    expect(gamutOf(result).status).toBe('passed');
    expect(result.mends).toMatchObject([{ mend: 'into-gamut', mended: ['gamut/out-of-gamut'] }]);
  });

  it('goes by the condition that is named: what it holds stays as it is', async () => {
    const cwd = makeFolder({ 'bed.png': makeArt([120, 95, 75], 96), 'mine.icc': COATED_REFERENCE });
    const { result } = await reportOf([...MEND, '--condition', 'mine.icc'], cwd);
    expect(result.mends).toEqual([]);
    expect(middleOf(cwd, result.output!.path)).toEqual([120, 95, 75]);
  });
});
