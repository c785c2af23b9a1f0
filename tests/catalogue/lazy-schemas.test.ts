import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/** Packages that a file of ours loads as soon as it is imported itself: dynamic and type-only imports do not count. */
function packagesLoadedBy(path: string, seen = new Set<string>()): ReadonlySet<string> {
  const packages = new Set<string>();
  if (seen.has(path)) return packages;
  seen.add(path);
  const text = readFileSync(path, 'utf8');
  for (const [, typeOnly, target = ''] of text.matchAll(
    /^(?:import|export)\s+(type\s)?[^'"]*?from\s+'([^']+)'/gm,
  )) {
    if (typeOnly) continue;
    if (!target.startsWith('.')) packages.add(target);
    else for (const name of packagesLoadedBy(join(dirname(path), target), seen)) packages.add(name);
  }
  return packages;
}

describe('the schema library', () => {
  it('is loaded by the schemas', () => {
    expect(packagesLoadedBy(join(root, 'src/catalogue/parse-blank.ts'))).toContain('zod');
  });

  it.each([
    'src/index.ts',
    'src/catalogue/catalogue.ts',
    'src/catalogue/search-blanks.ts',
    'src/catalogue/press-card.ts',
    'src/catalogue/read-blank-record.ts',
    'src/printers/read-printer.ts',
  ])('is not loaded by %s', (path) => {
    expect(packagesLoadedBy(join(root, path))).not.toContain('zod');
    expect(packagesLoadedBy(join(root, path))).not.toContain('jsonc-parser');
  });
});
