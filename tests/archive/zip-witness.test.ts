import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { writeZip } from '../../fixtures/byte-writers/write-zip.ts';
import { readZipEntries } from '../../src/archive/read-zip.ts';
import { askWitness, requireWitness } from '../witness.ts';

const FILES = { 'poirier é.png': 'a pear', 'Zinnia.png': 'x'.repeat(1e5), 'empty.png': '' };

it('reads what Info-ZIP packs, name for name and byte for byte', async (context) => {
  requireWitness(context, 'zip');
  const folder = mkdtempSync(join(tmpdir(), 'blankcheck-zip-'));
  try {
    for (const [name, content] of Object.entries(FILES)) writeFileSync(join(folder, name), content);
    expect(
      askWitness('zip', [
        '-q',
        '-j',
        join(folder, 'pack.zip'),
        ...Object.keys(FILES).map((name) => join(folder, name)),
      ]).status,
    ).toBe(0);
    const found: Record<string, string> = {};
    for await (const item of readZipEntries(readFileSync(join(folder, 'pack.zip'))))
      if ('bytes' in item) found[item.name] = Buffer.from(item.bytes).toString();
    expect(found).toEqual(FILES);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

it('the archives that the tests build are sound to Info-ZIP', (context) => {
  requireWitness(context, 'unzip');
  const archive = writeZip(Object.entries(FILES).map(([name, content]) => ({ name, content })));
  expect(askWitness('unzip', ['-t', 'pack.zip'], { 'pack.zip': archive }).status).toBe(0);
});
