import { describe, expect, it } from 'vitest';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder } from './temp-folder.ts';

/** Of two options that ask for two things, one would be ignored unseen. */
describe('options that contradict each other', () => {
  it.each([
    ['--width 10mm --fit cover', 2],
    ['--height 10mm --fit cover', 2],
    ['--extend blur', 2],
    ['--extend blur --mend drop-strays', 2],
    ['--width 10mm --fit inside', 0],
    ['--fit cover', 0],
    ['--fit cover --extend blur --mend extend-edges', 0],
  ])('%s: exit code %d', async (words, code) => {
    const cwd = makeFolder({ 'pear.png': makeArt([220, 0, 0], 300) });
    const all = ['check', 'pear.png', '--blank', '20x20mm', ...words.split(' ')];
    const run = await runMain(all, { cwd });
    expect(run.code).toBe(code);
    expect(run.stderr.includes('[bad-option]')).toBe(code === 2);
  });

  it.each([
    ['--width 10mm', { fit: 'cover' }],
    ['--height 10mm', { fit: 'cover' }],
    ['--width 10mm', { extend: 'blur' }],
  ])('%s: settings give way', async (words, settings) => {
    const cwd = makeFolder({
      'pear.png': makeArt([220, 0, 0], 300),
      'blankcheck.config.json': Buffer.from(JSON.stringify(settings)),
    });
    const all = ['check', 'pear.png', '--blank', '20x20mm', '--json', ...words.split(' ')];
    const run = await runMain(all, { cwd });
    expect(run.code).toBe(0);
    expect(JSON.parse(run.stdout).results[0].placementMm.width).toBeCloseTo(10, 6);
  });
});
