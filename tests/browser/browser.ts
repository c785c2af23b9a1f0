/// <reference lib="dom" />
/// <reference lib="dom.iterable" />
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import puppeteer, { type Browser, type Page } from 'puppeteer-core';
import { findProgram } from '../witness.ts';

const axeSource = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** null where none is installed. */
export async function launchBrowser(): Promise<Browser | null> {
  const executablePath = findProgram('chromium');
  if (executablePath === null) return null;
  // Containers have no user namespaces for its sandbox; it opens nothing but our own files.
  return puppeteer.launch({ executablePath, headless: true, args: ['--no-sandbox'] });
}

/** A page opened from a file, and whatever it asked for besides itself or did that it must not do. */
export interface OpenedPage {
  readonly page: Page;
  readonly misdeeds: readonly string[];
}

export async function openFile(
  browser: Browser,
  path: string,
  {
    widthPx = 1400,
    scheme = 'light',
  }: { readonly widthPx?: number; readonly scheme?: 'light' | 'dark' } = {},
): Promise<OpenedPage> {
  const page = await browser.newPage();
  const misdeeds: string[] = [];
  const { href } = pathToFileURL(path);
  page.on('request', (request) => {
    const url = request.url();
    if (url !== href && !url.startsWith('data:')) misdeeds.push(`asked for ${url}`);
  });
  page.on('dialog', (dialog) => {
    misdeeds.push(`said ${dialog.message()}`);
    void dialog.dismiss();
  });
  page.on('console', (message) => misdeeds.push(`console: ${message.text()}`));
  page.on('pageerror', (error) => misdeeds.push(`error: ${String(error)}`));
  await page.setViewport({ width: widthPx, height: 1000 });
  await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: scheme }]);
  await page.goto(href);
  return { page, misdeeds };
}

/** What is out of view is not laid out until it comes near, and what is closed not at all. */
export function layOutAll(page: Page): Promise<void> {
  return page.evaluate(() => {
    for (const skipped of document.querySelectorAll<HTMLElement>('.shown, .contact li'))
      skipped.style.contentVisibility = 'visible';
    for (const closed of document.querySelectorAll('details')) closed.open = true;
  });
}

/** What axe finds wrong by WCAG 2.2 A and AA and its own best practices, everything laid out; empty where all is well. */
export async function listViolations(page: Page): Promise<readonly string[]> {
  await layOutAll(page);
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`));
  });
}

/** The box of an element of a figure in the figure's own millimetres, from where it is on the screen. */
export function boxInMm(page: Page, selector: string) {
  return page.$eval(selector, (element) => {
    const svg = (element as SVGElement).ownerSVGElement!;
    const back = svg.getScreenCTM()!.inverse();
    // Of the geometry, without the stroke, whose width is that of the screen.
    const box = (element as SVGGraphicsElement).getBBox();
    const there = (element as SVGGraphicsElement).getScreenCTM()!;
    const from = new DOMPoint(box.x, box.y).matrixTransform(there).matrixTransform(back);
    const to = new DOMPoint(box.x + box.width, box.y + box.height)
      .matrixTransform(there)
      .matrixTransform(back);
    return { x: from.x, y: from.y, width: to.x - from.x, height: to.y - from.y };
  });
}
