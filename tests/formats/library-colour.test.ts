import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const folder = fileURLToPath(new URL('../../src', import.meta.url));
const sources = readdirSync(folder, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => [path, readFileSync(join(folder, path), 'utf8')] as const);
const withWord = (word: RegExp) => sources.filter(([, text]) => word.test(text)).map(([path]) => path);

/** The library would convert by intents that cannot be chosen, and pass over profiles that it cannot use in silence. */
describe('the imaging library never converts colour', () => {
  it('is never asked to convert to a profile or to keep one', () => {
    expect(withWord(/\.(with|keep)(IccProfile|Metadata)\(/)).toEqual([]);
  });

  it('decodes files without a look at their profiles', () => {
    const openers = sources.filter(
      ([, text]) => /sharp\(bytes/.test(text) && /\.toBuffer|\.raw\(/.test(text),
    );
    expect(openers.filter(([, text]) => !/ignoreIcc: true/.test(text)).map(([path]) => path)).toEqual([]);
  });
});
