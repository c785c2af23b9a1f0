import { describe, expect, it } from 'vitest';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder, readText } from './temp-folder.ts';

/** Black, 20 x 20 mm on a blank of 40 x 40 mm: with 3 mm of bleed all round 400 of 2116 mm2 are covered. */
const ART = makeArt([0, 0, 0], 240);
const WORDS = ['pear.png', '--blank', '40x40mm', '--width', '20mm'];
const PRICES = [
  '--cost',
  '--cost-of',
  'blank=2.50',
  '--cost-of',
  'inkPerMl=100',
  '--cost-of',
  'scrapRate=20%',
];
/** 400 mm2 x 19 ml/m2, and a fifth more. */
const INK_ML = 400e-6 * 19 * 1.2;

describe('--cost', () => {
  it.each(['prepare', 'check'])(
    '%s tells it as data: ink by measured cover, parts, what is left out',
    async (command) => {
      const { stdout } = await runMain([command, ...WORDS, ...PRICES, '--json'], {
        cwd: makeFolder({ 'pear.png': ART }),
      });
      const document = JSON.parse(stdout);
      expect(findSchemaFaults(document)).toEqual([]);
      const { cost } = document.results[0];
      // The art ends within half a pixel of 300 ppi of its place: 0.17 mm in 20 mm on both axes, 1.7 % of its area.
      expect(cost.ink.ml / INK_ML).toBeGreaterThan(1 - 0.017);
      expect(cost.ink.ml / INK_ML).toBeLessThan(1 + 0.017);
      expect(cost.perGoodPiece).toBeCloseTo((2.5 + 100 * cost.ink.ml) / 0.8, 4);
      expect(cost.leftOut).toContain('labour');
      expect(cost.leftOut).not.toContain('blank');
    },
  );

  it('costs as much whether the file is written or not', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const costs = await Promise.all(
      [['check'], ['prepare'], ['prepare', '--dry-run']].map(async ([command, ...more]) => {
        const { stdout } = await runMain([command!, ...WORDS, ...PRICES, ...more, '--json'], { cwd });
        return JSON.parse(stdout).results[0].cost;
      }),
    );
    expect(costs[1]).toEqual(costs[0]);
    expect(costs[2]).toEqual(costs[0]);
  });

  it('takes prices from the settings, and those that are typed over them', async () => {
    const cwd = makeFolder({
      'pear.png': ART,
      'blankcheck.config.json': '{ "costOf": ["blank=2.50", "packaging=1"] }',
    });
    const costOf = async (...more: readonly string[]) => {
      const { stdout } = await runMain(['check', ...WORDS, ...more, '--json'], { cwd });
      return JSON.parse(stdout).results[0].cost;
    };
    expect((await costOf('--cost')).perGoodPiece).toBe(3.5);
    expect((await costOf('--cost', '--cost-of', 'blank=4')).perGoodPiece).toBe(5);
    // Prices alone ask for nothing.
    expect(await costOf()).toBeUndefined();
  });

  it('is told to people in text and on the page, with what is left out', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const { stderr } = await runMain(['check', ...WORDS, ...PRICES, '--report', 'report.html'], { cwd });
    for (const text of [stderr.replace(/\n +/g, ' '), readText(cwd, 'report.html')]) {
      expect(text).toContain('Cost, in the currency of your settings');
      expect(text).toMatch(/Left out.*freight, transfer paper.*wear of printer and press/);
    }
  });

  it('is left out where nothing can be printed', async () => {
    const cwd = makeFolder({ 'torn.png': 'torn' });
    const { stdout } = await runMain(['check', 'torn.png', '--blank', '40x40mm', '--cost', '--json'], {
      cwd,
    });
    for (const result of JSON.parse(stdout).results) expect(result).not.toHaveProperty('cost');
  });

  it.each([['blnak=2'], ['blank=2,50'], ['scrapRate=1']])(
    '%s is refused, without --cost too',
    async (word) => {
      const { code, stderr } = await runMain(['check', ...WORDS, '--cost-of', word], {
        cwd: makeFolder({ 'pear.png': ART }),
      });
      expect([code, stderr]).toEqual([2, expect.stringContaining('[bad-cost]')]);
    },
  );
});
