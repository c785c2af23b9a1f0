import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect } from 'vitest';

const folder = join(dirname(fileURLToPath(import.meta.url)), '..', 'fixtures', 'expected');

/** Holds a text against `fixtures/expected/<name>`; with UPDATE=1 the file is rewritten, and the diff is the review. */
export function expectGolden(name: string, text: string): void {
  const path = join(folder, name);
  if (process.env.UPDATE === '1') {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text);
  }
  expect(text).toBe(readFileSync(path, 'utf8'));
}
