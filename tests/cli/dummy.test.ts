import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { RunReport } from '../../src/index.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder } from './temp-folder.ts';

const ART = makeArt([40, 120, 60], 300);

describe('--dummy', () => {
  it('draws the outline in place of the art, under a name that cannot be taken for the print', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const words = [
      'pear.png',
      '--blank',
      '40x40mm',
      '--width',
      '25mm',
      '--sheet',
      '150x150mm',
      '--format',
      'png',
    ];
    const run = await runMain([...words, '--dummy', '--json'], { cwd });
    const report = JSON.parse(run.stdout) as RunReport;
    expect(findSchemaFaults(report)).toEqual([]);
    expect(listFiles(cwd)).toEqual(['pear.png', 'print-ready/pear.40x40mm.dummy.png']);
    const { width, data } = PNG.sync.read(readFileSync(join(cwd, 'print-ready/pear.40x40mm.dummy.png')));
    // The outline of 40 mm stands in the middle of the page, 55 to 95 mm; nothing is inked within it, and no green at all.
    const at = (xMm: number, yMm: number) => {
      const [x, y] = [xMm, yMm].map((mm) => Math.floor((mm / 25.4) * 300));
      return data[(y! * width + x!) * 4 + 1]!;
    };
    for (const mm of [57, 65, 75, 85, 93]) expect(at(mm, 75)).toBe(255);
    expect(Math.min(...[54.9, 55, 55.1].map((x) => at(x, 75)))).toBeLessThan(128);
    expect(Math.min(...[94.9, 95, 95.1].map((y) => at(75, y)))).toBeLessThan(128);
  });

  it('is asked for with a sheet only', async () => {
    const run = await runMain(['pear.png', '--blank', '40x40mm', '--dummy'], {
      cwd: makeFolder({ 'pear.png': ART }),
    });
    expect(run.code).toBe(2);
    expect(run.stderr).toContain('[bad-option]');
  });
});
