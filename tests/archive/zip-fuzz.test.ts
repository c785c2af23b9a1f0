import { describe, expect, it } from 'vitest';
import { writeZip } from '../../fixtures/byte-writers/write-zip.ts';
import { readZipEntries } from '../../src/archive/read-zip.ts';
import { BlankcheckError } from '../../src/blankcheck-error.ts';

const CONTENTS = ['a pear', 'an apple '.repeat(40), ''];
const whole = writeZip([
  { name: 'pear.png', content: CONTENTS[0]!, method: 0 },
  { name: 'beds/apple.png', content: CONTENTS[1]! },
  { name: 'empty.png', content: CONTENTS[2]! },
]);

/** Every text that comes out; only errors of ours may come beside it. */
async function textsOf(bytes: Uint8Array): Promise<string[]> {
  const texts: string[] = [];
  try {
    for await (const item of readZipEntries(bytes))
      if ('bytes' in item) texts.push(Buffer.from(item.bytes).toString());
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
  }
  return texts;
}

describe('damage', () => {
  it('cut at any byte: an error of ours, never a wrong file', async () => {
    expect(await textsOf(whole)).toHaveLength(3);
    for (let length = 0; length < whole.length; length += 1)
      expect(await textsOf(whole.subarray(0, length))).toEqual([]);
  });

  it('any one bit turned: an error of ours or the right content, never a wrong one', async () => {
    let spared = 0;
    for (let bit = 0; bit < whole.length * 8; bit += 1) {
      const hurt = whole.slice();
      hurt[bit >> 3]! ^= 1 << (bit & 7);
      const texts = await textsOf(hurt);
      for (const text of texts) expect(CONTENTS).toContain(text);
      spared += texts.length;
    }
    // Most bits hurt at most one entry of three: a reader that gave up at the first would not come near this.
    expect(spared).toBeGreaterThan(2 * whole.length * 8);
  });
});
