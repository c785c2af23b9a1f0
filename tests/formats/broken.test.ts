import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { makeBrokenFiles } from '../../fixtures/byte-writers/make-broken-files.ts';
import { readArtwork } from '../../src/formats/read-artwork.ts';

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), '../../fixtures/broken');

if (process.env.UPDATE === '1') {
  mkdirSync(FOLDER, { recursive: true });
  for (const [name, bytes] of Object.entries(await makeBrokenFiles()))
    writeFileSync(join(FOLDER, name), bytes);
}
const NAMES = readdirSync(FOLDER).sort();

describe('broken files: the name is the expectation', () => {
  it('are those that the recipes make', async () => {
    expect(NAMES).toEqual(Object.keys(await makeBrokenFiles()).sort());
  });

  it.each(NAMES)('%s', async (name) => {
    const bytes = new Uint8Array(readFileSync(join(FOLDER, name)));
    const error: unknown = await readArtwork(bytes).then(
      () => null,
      (reason: unknown) => reason,
    );
    expect(error).toMatchObject({ code: name.split('--')[0], kind: 'artwork' });
  });
});
