import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { findBlank } from '../../src/index.ts';
import { makeArt } from '../cli/art.ts';
import { runMain } from '../cli/run-main.ts';
import { makeFolder } from '../cli/temp-folder.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { boxInMm, launchBrowser, listViolations, openFile } from './browser.ts';

let browser: Browser | null = null;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function makeReport(art: Uint8Array, ...words: readonly string[]) {
  const cwd = makeFolder({ 'tag.png': art });
  const args = ['check', 'tag.png', ...words, '--proof', 'proofs', '--json', '--report', 'report.html'];
  const { stdout } = await runMain(args, { cwd });
  return { cwd, path: join(cwd, 'report.html'), result: JSON.parse(stdout).results[0] };
}

/** The colour on the screen at a point of a figure, given in its own millimetres. */
async function colourAt(page: Page, selector: string, mm: { readonly x: number; readonly y: number }) {
  const clip = await page.$eval(
    selector,
    (svg, { x, y }) => {
      svg.scrollIntoView({ block: 'center' });
      const at = new DOMPoint(x, y).matrixTransform((svg as SVGSVGElement).getScreenCTM()!);
      return { x: Math.round(at.x + scrollX), y: Math.round(at.y + scrollY), width: 1, height: 1 };
    },
    mm,
  );
  const { data } = PNG.sync.read(Buffer.from(await page.screenshot({ clip })));
  return [...data.subarray(0, 3)];
}

describe('what a figure shows', () => {
  it('has the holes of the blank at their places', async (context) => {
    requireWitness(context, 'chromium');
    const { path } = await makeReport(makeArt([200, 40, 40], 400), '--blank', 'tag-pet-round');
    const { page } = await openFile(browser!, path);
    const { xMm, yMm, diameterMm } = findBlank('tag-pet-round')!.holes![0]! as {
      xMm: number;
      yMm: number;
      diameterMm: number;
    };
    const hole = await boxInMm(page, '#piece-1-figure .hole');
    expect(hole.x).toBeCloseTo(xMm - diameterMm / 2, 2);
    expect(hole.y).toBeCloseTo(yMm - diameterMm / 2, 2);
    expect([hole.width, hole.height].map((mm) => Math.round(mm * 100))).toEqual([320, 320]);
  });

  it('stripes what is very dark, where it is, once that is switched on', async (context) => {
    requireWitness(context, 'chromium');
    const words = ['--blank', '60x60mm', '--width', '40mm', '--offset', '5mm,0mm'];
    const { path, result } = await makeReport(makeArt([4, 4, 4], 600), ...words);
    const { page } = await openFile(browser!, path);
    for (const name of ['findings', 'lines']) await page.click(`#show-${name}`);
    const { x, y, width, height } = result.placementMm;
    const middle = { x: x + width / 2, y: y + height / 2 };
    const isDark = (colour: readonly number[]) => Math.max(...colour) < 40;
    expect(isDark(await colourAt(page, '#piece-1-figure', middle))).toBe(true);
    await page.click('#show-dark');
    const box = await boxInMm(page, '#piece-1-figure .dark > rect');
    // A cell of the mask may reach beyond the art: 40 mm in 240 cells.
    for (const [actual, expected] of [
      [box.x, x],
      [box.y, y],
      [box.width, width],
      [box.height, height],
    ] as const)
      expect(Math.abs(actual - expected)).toBeLessThan(40 / 240 + 0.1);
    const seen = [];
    for (let step = 0; step < 12; step += 1)
      seen.push(await colourAt(page, '#piece-1-figure', { x: middle.x + step / 4, y: middle.y }));
    expect(seen.some(([r, g]) => r! > 200 && g! > 170)).toBe(true);
    expect(isDark(await colourAt(page, '#piece-1-figure', { x: 2, y: 30 }))).toBe(false);
  });

  it('shows in the proof the colour that the proof as a file has there', async (context) => {
    requireWitness(context, 'chromium');
    const words = ['--blank', '60x60mm', '--width', '30mm'];
    const { cwd, path, result } = await makeReport(makeArt([20, 40, 230], 450), ...words);
    const { page } = await openFile(browser!, path);
    const proof = PNG.sync.read(readFileSync(join(cwd, result.proof.path)));
    // The blank lies in the middle of the file's width; its first 60 mm are the blank with its room.
    const perMm = result.proof.ppi / 25.4;
    const [column, row] = [proof.width / 2, 30 * perMm].map(Math.round) as [number, number];
    const expected = [...proof.data.subarray(4 * (row * proof.width + column)).subarray(0, 3)];
    const colour = await colourAt(page, '.figure.proof', { x: 30, y: 30 });
    // The picture of the page is a lossy one: in a flat field a code or two.
    for (const [index, code] of colour.entries()) expect(Math.abs(code - expected[index]!)).toBeLessThan(5);
    expect(
      Math.max(...expected.map((code, index) => Math.abs(code - [20, 40, 230][index]!))),
    ).toBeGreaterThan(10);
  });
});

describe('the page', () => {
  it('explains every check that found something, a link away from the finding', async (context) => {
    requireWitness(context, 'chromium');
    const { path, result } = await makeReport(makeArt(), '--blank', 'tag-pet-round', '--fit', 'cover');
    const { page, misdeeds } = await openFile(browser!, path);
    const found = result.outcomes.filter(({ status }: { status: string }) => status === 'found');
    const links = await page.$$eval('.findings .origin a', (all) =>
      all.map((link) => link.getAttribute('href')!),
    );
    expect(new Set(links)).toEqual(new Set(found.map(({ check }: { check: string }) => `#about-${check}`)));
    for (const link of links)
      expect(await page.$$eval(`.about ${link} h4`, (all) => all.length)).toBeGreaterThan(0);
    await page.click('.findings .origin a');
    expect(await page.$eval('.about section:target', ({ textContent }) => textContent)).toContain(
      'What to do',
    );
    expect(misdeeds).toEqual([]);
  });

  it('has faults that axe would find, once they are planted', async (context) => {
    requireWitness(context, 'chromium');
    const { path } = await makeReport(makeArt(), '--blank', 'tag-pet-round');
    const plant = async (fault: () => void) => {
      const { page } = await openFile(browser!, path);
      await page.evaluate(fault);
      return (await listViolations(page)).map((text) => text.split(':')[0]);
    };
    expect(
      await plant(() => {
        // Its name goes with its aria-label.
        document.querySelector('.figure.art')!.removeAttribute('aria-label');
      }),
    ).toContain('svg-img-alt');
    expect(
      await plant(() => {
        document.querySelector<HTMLElement>('.findings p')!.style.color = '#bbb';
      }),
    ).toContain('color-contrast');
    expect(
      await plant(() => {
        const input = document.querySelector('#show-dark')!;
        document.body.append(input);
      }),
    ).toContain('label');
  });

  it('is on paper not longer than a page for each artwork', async (context) => {
    requireWitness(context, 'chromium', 'pdfinfo');
    const { path } = await makeReport(makeArt(), '--blank', 'tag-pet-round', '--fit', 'cover');
    const { page } = await openFile(browser!, path);
    const pdf = Buffer.from(await page.pdf({ format: 'a4' }));
    const { stdout } = askWitness('pdfinfo', ['-'], {}, pdf);
    expect(stdout.toString()).toMatch(/^Pages: +1$/m);
  });
});
