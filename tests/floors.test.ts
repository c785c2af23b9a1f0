import { readdirSync, readFileSync } from 'node:fs';
import { isBuiltin } from 'node:module';
import { dirname, join, normalize, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

/** The floors of the house; arrows only go down, siblings do not know each other. DEVELOPERS.md explains them. */
const FLOORS: Readonly<Record<string, number>> = {
  geometry: 0,
  colour: 0,
  icc: 1,
  lettering: 1,
  raster: 1,
  catalogue: 1,
  archive: 2,
  conditions: 2,
  costing: 2,
  faults: 2,
  job: 2,
  ledger: 2,
  printers: 2,
  sheet: 2,
  formats: 2,
  checks: 3,
  mends: 3,
  prepare: 3,
  reports: 4,
  pictures: 4,
};
/** Files that stand beside the floors: the error type below all of them, the doors above. */
const BELOW = new Set(['blankcheck-error.ts']);
const ABOVE = new Set([
  'index.ts',
  'picture-piece.ts',
  'preflight.ts',
  'print-ready-format.ts',
  'read-printer-profile.ts',
  'check-artwork.ts',
  'compose-artwork.ts',
  'compose-page.ts',
  'compose-sheet.ts',
  'judge-piece.ts',
  'lay-sheets.ts',
  'find-page.ts',
  'lay-out-pdf.ts',
  'inspect-print-ready.ts',
  'mend-artwork.ts',
  'read-artwork.ts',
  'read-condition.ts',
  'read-for-print.ts',
  'read-or-report.ts',
  'prepare-artwork.ts',
  'proof-artwork.ts',
  'proof-wrap.ts',
  'roll-paper.ts',
  'sheet-orders.ts',
  'small-picture.ts',
  'start-files.ts',
  'report-artwork.ts',
  'suit-artwork.ts',
  'version.ts',
  'view-masks.ts',
  'view-piece.ts',
]);

const root = join(dirname(fileURLToPath(import.meta.url)), '..');

function filesBelow(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : path.endsWith('.ts') ? [path] : [];
  });
}

interface Import {
  readonly target: string;
  readonly typeOnly: boolean;
}

function importsOf(path: string): Import[] {
  const text = readFileSync(path, 'utf8');
  const found: Import[] = [];
  for (const match of text.matchAll(
    /(?:import|export)\s+(type\s)?[^'"]*?from\s+'([^']+)'|import\('([^']+)'\)|import\s+'([^']+)'/g,
  ))
    found.push({ target: match[2] ?? match[3] ?? match[4] ?? '', typeOnly: match[1] !== undefined });
  return found;
}

const sources = filesBelow(join(root, 'src'));
const ours = (path: string, target: string) =>
  relative(join(root, 'src'), normalize(join(dirname(path), target)));

describe('floors', () => {
  it('every file of src stands in a folder of the table or beside the floors', () => {
    const strangers = sources
      .map((path) => relative(join(root, 'src'), path))
      .filter((path) => {
        const [folder = '', ...rest] = path.split(sep);
        return rest.length === 0 ? !BELOW.has(folder) && !ABOVE.has(folder) : !(folder in FLOORS);
      });
    expect(strangers).toEqual([]);
  });

  it('imports go down, never up or sideways', () => {
    const wrong: string[] = [];
    for (const path of sources) {
      const from = relative(join(root, 'src'), path);
      const [fromFolder = ''] = from.split(sep);
      if (ABOVE.has(from)) continue;
      for (const { target } of importsOf(path)) {
        if (!target.startsWith('.')) continue;
        const to = ours(path, target);
        const [toFolder = ''] = to.split(sep);
        if (BELOW.has(to) || toFolder === fromFolder) continue;
        const down = to.includes(sep) && (FLOORS[toFolder] ?? 99) < (FLOORS[fromFolder] ?? -1);
        if (!down) wrong.push(`${from} -> ${to}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  it('has no import cycles', () => {
    const graph = new Map(
      sources.map((path) => {
        const from = relative(join(root, 'src'), path);
        const to = importsOf(path)
          .filter(({ target, typeOnly }) => target.startsWith('.') && !typeOnly)
          .map(({ target }) => ours(path, target));
        return [from, to] as const;
      }),
    );
    const done = new Set<string>();
    const cycles: string[] = [];
    const visit = (file: string, way: readonly string[]): void => {
      if (way.includes(file)) cycles.push([...way.slice(way.indexOf(file)), file].join(' -> '));
      if (done.has(file) || way.includes(file)) return;
      for (const next of graph.get(file) ?? []) visit(next, [...way, file]);
      done.add(file);
    };
    for (const file of graph.keys()) visit(file, []);
    expect(cycles).toEqual([]);
  });

  it('src touches no disk, process, console, clock, chance or network', () => {
    const forbidden =
      /\bprocess\.|\bconsole\.|\bDate\.now|\bnew Date\(|\bMath\.random|from '(?:node:)?(?:fs|fs\/promises|child_process|net|http|https|os|worker_threads)'|\bfetch\(/;
    const wrong = sources.filter((path) => forbidden.test(readFileSync(path, 'utf8')));
    expect(wrong.map((path) => relative(root, path))).toEqual([]);
  });

  it('of the built-in modules it knows only those that touch nothing outside', () => {
    const harmless = new Set([
      'node:buffer',
      'node:crypto',
      'node:stream',
      'node:timers/promises',
      'node:util',
      'node:zlib',
    ]);
    const wrong = sources.flatMap((path) =>
      importsOf(path)
        .filter(({ target }) => (target.startsWith('node:') || isBuiltin(target)) && !harmless.has(target))
        .map(({ target }) => `${relative(root, path)} -> ${target}`),
    );
    expect(wrong).toEqual([]);
  });

  it('only formats knows the imaging package', () => {
    const wrong = sources.filter((path) => importsOf(path).some(({ target }) => target === 'sharp'));
    expect(
      wrong
        .map((path) => relative(join(root, 'src'), path).split(sep)[0])
        .filter((folder) => folder !== 'formats'),
    ).toEqual([]);
  });

  it('the command line sees the library only through its door', () => {
    const wrong: string[] = [];
    for (const path of filesBelow(join(root, 'cli')))
      for (const { target } of importsOf(path)) {
        if (!target.startsWith('.')) continue;
        const to = relative(root, normalize(join(dirname(path), target)));
        if (to.startsWith(`src${sep}`) && to !== join('src', 'index.ts'))
          wrong.push(`${relative(root, path)} -> ${to}`);
      }
    expect(wrong).toEqual([]);
  });
});
