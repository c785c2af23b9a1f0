import { join } from 'node:path';
import { PNG } from 'pngjs';
import type { Browser, Page } from 'puppeteer-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeArt } from '../cli/art.ts';
import { runMain } from '../cli/run-main.ts';
import { makeFolder } from '../cli/temp-folder.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { boxInMm, launchBrowser, layOutAll, listViolations, openFile } from './browser.ts';

const EVIL = `beds/<img src=x onerror=alert(1)>"'&amp;.png`;
const TURNED = 'beds/line\nbreak \u202egnp.exe.png';
/** 24 px over 20 mm are 30 ppi: below every stop. It ends 2 mm from the edge, 3 mm beyond the safe line. */
const WORDS = ['beds', '--blank', '60x60mm', '--width', '20mm', '--offset', '18mm,-7mm'];

interface Result {
  readonly artwork: { readonly path: string };
  readonly placementMm: Box | null;
  readonly outcomes: readonly {
    readonly check: string;
    readonly findings?: readonly { readonly severity: string; readonly place?: { readonly mm: Box } }[];
  }[];
}
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

let browser: Browser | null = null;

beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser?.close());

async function makeReport(words: readonly string[] = WORDS) {
  const cwd = makeFolder({
    'beds/basil.png': makeArt([230, 20, 20]),
    'beds/torn.png': makeArt().subarray(0, 60),
    [EVIL]: makeArt([10, 230, 40]),
    [TURNED]: makeArt([4, 4, 4]),
  });
  const { code, stdout } = await runMain(['check', ...words, '--json', '--report', 'report.html'], { cwd });
  const { results } = JSON.parse(stdout) as { results: readonly Result[] };
  return { code, results, path: join(cwd, 'report.html') };
}

/** Findings of a piece as the page numbers them. */
function placesOf({ outcomes }: Result): readonly (Box | undefined)[] {
  const found = outcomes.flatMap(({ check, findings = [] }) =>
    findings.map((finding) => ({ check, ...finding })),
  );
  return ['error', 'warning', 'advice'].flatMap((wanted) =>
    found.filter(({ severity }) => severity === wanted).map(({ place }) => place?.mm),
  );
}

/** Where a picture of a figure is more red than anything else, in mm of the figure. */
async function redBox(page: Page, selector: string): Promise<Box> {
  const figure = (await page.$(selector))!;
  // The bar of switches stays on top of whatever is scrolled below it.
  await page.$eval('.tools', (tools) => {
    (tools as HTMLElement).style.position = 'static';
  });
  await layOutAll(page);
  const view = await figure.evaluate((svg) => {
    svg.scrollIntoView();
    const { x, y, width, height } = svg.getBoundingClientRect();
    const matrix = (svg as SVGSVGElement).getScreenCTM()!;
    return {
      x: x + scrollX,
      y: y + scrollY,
      width,
      height,
      perMm: matrix.a,
      left: matrix.e - x,
      top: matrix.f - y,
    };
  });
  const shot = PNG.sync.read(Buffer.from(await page.screenshot({ clip: view })));
  const xs: number[] = [];
  const ys: number[] = [];
  for (let at = 0; at < shot.width * shot.height; at += 1) {
    const [r, g, b] = shot.data.subarray(4 * at, 4 * at + 3);
    if (r! < 150 || g! > 110 || b! > 110) continue;
    xs.push(at % shot.width);
    ys.push(Math.floor(at / shot.width));
  }
  const span = (values: readonly number[], origin: number) => {
    const least = values.reduce((one, other) => Math.min(one, other));
    const most = values.reduce((one, other) => Math.max(one, other)) + 1;
    return [(least - origin) / view.perMm, (most - least) / view.perMm] as const;
  };
  const [[x, width], [y, height]] = [span(xs, view.left), span(ys, view.top)];
  return { x, y, width, height };
}

describe('the page of a run in a browser', () => {
  it('shows lines, findings and art where the numbers say', async (context) => {
    requireWitness(context, 'chromium');
    const { results, path } = await makeReport();
    const { page, misdeeds } = await openFile(browser!, path);
    const index = await page.$$eval('.piece h2', (names) =>
      names.findIndex((name) => name.textContent === 'beds/basil.png'),
    );
    const id = `#piece-${index + 1}-figure`;
    await page.$eval(id, (figure) => figure.scrollIntoView());
    expect(await boxInMm(page, `${id} .lines .outline:not(.under)`)).toEqual(
      near({ x: 0, y: 0, width: 60, height: 60 }),
    );
    expect(await boxInMm(page, `${id} .safe:not(.under)`)).toEqual(
      near({ x: 5, y: 5, width: 50, height: 50 }),
    );
    expect(await boxInMm(page, `${id} .bleed:not(.under)`)).toEqual(
      near({ x: -3, y: -3, width: 66, height: 66 }),
    );
    const basil = results.find(({ artwork }) => artwork.path === 'beds/basil.png')!;
    const places = placesOf(basil);
    expect(places.filter(Boolean).length).toBeGreaterThan(1);
    for (const [at, place] of places.entries()) {
      const selector = `${id} .found:not(.under)[data-finding="${at + 1}"]`;
      if (place) expect(await boxInMm(page, selector)).toEqual(near(place));
      else expect(await page.$(selector)).toBeNull();
    }
    for (const name of ['findings', 'lines']) await page.click(`#show-${name}`);
    // Half a pixel of the small picture (66 mm in 480 px) and one of the screen.
    const red = await redBox(page, id);
    for (const key of ['x', 'y', 'width', 'height'] as const)
      expect(Math.abs(red[key] - basil.placementMm![key])).toBeLessThan(0.35);
    expect(misdeeds).toEqual([]);
  });

  it('shows names from outside as they are written, runs nothing and asks for nothing', async (context) => {
    requireWitness(context, 'chromium');
    const { path } = await makeReport();
    const { page, misdeeds } = await openFile(browser!, path);
    const names = await page.$$eval('.piece h2 bdi', (all) => all.map(({ textContent }) => textContent));
    expect(names).toContain(EVIL);
    expect(names).toContain('beds/line\\nbreak \\u202egnp.exe.png');
    expect(await page.$$eval('img, script, iframe, object, link', (all) => all.length)).toBe(0);
    const torn = await page.$eval('.piece:has(.verdict.unreadable)', ({ textContent }) => textContent);
    expect(torn).toContain('beds/torn.png');
    expect(torn).toContain('Nothing of it was checked');
    expect(torn).not.toContain('Passed');
    expect(misdeeds).toEqual([]);
  });

  it('is switched and filtered from the keyboard alone', async (context) => {
    requireWitness(context, 'chromium');
    const { path } = await makeReport();
    const { page } = await openFile(browser!, path);
    const visible = (selector: string) =>
      page.$$eval(selector, (all) => all.filter((one) => one.getClientRects().length > 0).length);
    const focused = () => page.evaluate(() => document.activeElement?.id);
    expect([await visible('.figure .gamut'), await visible('.figure .dark')]).toEqual([0, 0]);
    for (const id of ['show-findings', 'show-lines', 'show-gamut']) {
      await page.keyboard.press('Tab');
      expect(await focused()).toBe(id);
    }
    await page.keyboard.press('Space');
    expect(await visible('.contact li')).toBe(4);
    expect(
      await page.$$eval(
        '.figure .gamut',
        (all) => all.filter((one) => getComputedStyle(one).display !== 'none').length,
      ),
    ).toBeGreaterThan(0);
    for (const id of ['show-dark', 'only-all']) {
      await page.keyboard.press('Tab');
      expect(await focused()).toBe(id);
    }
    while ((await focused()) !== 'only-unreadable') await page.keyboard.press('ArrowRight');
    expect([await visible('.contact li'), await visible('.shown')]).toEqual([1, 1]);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    // The browser goes there in its own time.
    await page.waitForFunction(() => /^#piece-\d+$/.test(location.hash), { timeout: 20_000 });
  });

  it.each([
    [1400, 'light'],
    [390, 'dark'],
  ] as const)(
    'has no fault of access at %d px, %s, and nothing beside the screen',
    async (widthPx, scheme) => {
      if (browser === null) return;
      const { path } = await makeReport();
      const { page } = await openFile(browser, path, { widthPx, scheme });
      expect(await listViolations(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(widthPx);
    },
  );

  it('shows the strip of a round body with its proof from four sides', async (context) => {
    requireWitness(context, 'chromium');
    const { path } = await makeReport([
      'beds/basil.png',
      '--blank',
      'tumbler-20oz-tapered',
      '--width',
      '60mm',
    ]);
    const { page, misdeeds } = await openFile(browser!, path);
    expect(await page.$$eval('.figures.round .figure.proof', (all) => all.length)).toBe(1);
    expect(misdeeds).toEqual([]);
  });

  it('prints every verdict and finding', async (context) => {
    requireWitness(context, 'chromium', 'pdftotext');
    const { path, results } = await makeReport();
    const { page } = await openFile(browser!, path);
    const pdf = await page.pdf({ format: 'a4' });
    const { stdout } = askWitness('pdftotext', ['-', '-'], {}, Buffer.from(pdf));
    const text = stdout.toString();
    for (const { artwork } of results.filter(({ artwork }) => !artwork.path.includes('<')))
      expect(text.replaceAll('\n', '')).toContain(
        artwork.path.replace('\n', '\\n').replace('\u202e', '\\u202e').slice(0, 12),
      );
    expect(text).toContain('effective-resolution/below-stop');
    expect(text).toContain('Not checked');
  });
});

function near(box: Box): Box {
  const of = (value: number) => expect.closeTo(value, 2) as number;
  return { x: of(box.x), y: of(box.y), width: of(box.width), height: of(box.height) };
}
