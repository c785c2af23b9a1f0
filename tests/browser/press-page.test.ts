import { join } from 'node:path';
import type { Browser } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeArt } from '../cli/art.ts';
import { runMain } from '../cli/run-main.ts';
import { makeFolder } from '../cli/temp-folder.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { launchBrowser, listViolations, openFile } from './browser.ts';

let browser: Browser | null = null;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function makeCard(blank: string): Promise<string> {
  const cwd = makeFolder({ 'pear.png': makeArt([200, 40, 40], 300) });
  const words = ['press', blank, '--art', 'pear.png', '--page', 'card.html'];
  expect((await runMain(words, { cwd })).code).toBe(0);
  return join(cwd, 'card.html');
}

describe('the press card in a browser', () => {
  it.each([
    ['tile-ceramic-8in', 1400, 'light'],
    ['mug-11oz', 390, 'dark'],
    ['panel-glass-5x7', 390, 'light'],
  ] as const)(
    'of %s has no fault of access at %d px, %s, and nothing beside the screen',
    async (blank, widthPx, scheme) => {
      if (browser === null) return;
      const { page, misdeeds } = await openFile(browser, await makeCard(blank), { widthPx, scheme });
      expect(await listViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(widthPx);
      expect(misdeeds).toEqual([]);
    },
  );

  it('draws layer 1 of a flat press at the bottom, each above the one that it lies on', async (context) => {
    requireWitness(context, 'chromium');
    const { page } = await openFile(browser!, await makeCard('tile-ceramic-8in'));
    const layers = await page.$$eval('.stack li', (all) =>
      all.map((layer) => ({
        number: (layer as HTMLLIElement).value,
        top: layer.getBoundingClientRect().top,
      })),
    );
    const upwards = [...layers].sort((one, other) => one.number - other.number);
    expect(upwards.map(({ number }) => number)).toEqual(upwards.map((_, index) => index + 1));
    for (const [index, { top }] of upwards.entries())
      if (index > 0) expect(top).toBeLessThan(upwards[index - 1]!.top);
  });

  it.each(['tile-ceramic-8in', 'mug-11oz', 'tumbler-20oz-tapered'])(
    'of %s with a piece is at most two pages of paper, start and cautions on them',
    async (blank) => {
      if (browser === null) return;
      const { page } = await openFile(browser, await makeCard(blank));
      const pdf = Buffer.from(await page.pdf({ format: 'a4' }));
      const pages = Number(
        /^Pages: +(\d+)$/m.exec(askWitness('pdfinfo', ['-'], {}, pdf).stdout.toString())?.[1],
      );
      expect(pages).toBeLessThanOrEqual(2);
      const text = askWitness('pdftotext', ['-', '-'], {}, pdf).stdout.toString();
      expect(text).toContain('Start with');
      expect(text).toContain('Last word');
    },
  );
});
