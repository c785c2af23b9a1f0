import { type Dirent, readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const root = new URL('..', import.meta.url);
const [map] = /^## The map\n([\s\S]*?)\n## /m.exec(readFileSync(new URL('DEVELOPERS.md', root), 'utf8'))!;
const named = new Set(map.match(/[\w.-]+/g));

function namesIn(folder: string, counts: (entry: Dirent) => boolean = () => true): string[] {
  const entries = readdirSync(new URL(folder, root), { withFileTypes: true });
  const names = entries.filter(counts).map(({ name }) => name);
  // An empty list would be true of any map.
  expect(names.length).toBeGreaterThan(1);
  return names;
}

const isUnnamed = (name: string) => !named.has(name);
const isFolder = (entry: Dirent) => entry.isDirectory();

it.each(['src/', 'cli/'])('the map names every folder and file of %s', (folder) => {
  expect(namesIn(folder).filter(isUnnamed)).toEqual([]);
});

it.each(['src/sheet/', 'src/reports/', 'tests/'])('the map names every folder of %s', (folder) => {
  expect(namesIn(folder, isFolder).filter(isUnnamed)).toEqual([]);
});
