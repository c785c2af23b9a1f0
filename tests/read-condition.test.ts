import { describe, expect, it } from 'vitest';
import { curveTag } from '../fixtures/byte-writers/icc-tags.ts';
import { BlankcheckError } from '../src/blankcheck-error.ts';
import { MAX_CONDITION_BYTES, readCondition } from '../src/read-condition.ts';
import { makeArt } from './cli/art.ts';
import { COATED_REFERENCE } from './icc/coated-reference.ts';
import { writeGrayProfile, writeMatrixProfile } from './icc/simple-profiles.ts';
import { TABLE_PROFILES } from './icc/table-profiles.ts';
import { writeTableProfile } from './icc/write-table-profile.ts';

const text = (words: string) => new TextEncoder().encode(words);
/** The reference with other characters for its class or one of its tags. */
const renamed = (from: string, to: string) => {
  const bytes = Uint8Array.from(COATED_REFERENCE);
  for (let at = 0; at < 512; at++)
    if (String.fromCharCode(...bytes.subarray(at, at + from.length)) === from) bytes.set(text(to), at);
  return bytes;
};

describe('readCondition', () => {
  it("takes a printer's profile: by its own name, as nobody's reference", () => {
    const condition = readCondition(COATED_REFERENCE, 'mine.icc');
    expect(condition).toMatchObject({ id: 'mine.icc', reference: false, attribution: null });
    expect(condition.name).toContain('TR 006');
    expect(condition.profile.class).toBe('output');
  });

  it('takes an RGB display or space that stands for an RGB printer', () => {
    expect(readCondition(writeMatrixProfile(curveTag([256 * 2.2])), 'rgb.icc').profile.space).toBe('rgb');
    const table = writeTableProfile(TABLE_PROFILES.find(({ space }) => space === 'RGB ')!);
    expect(readCondition(table, 'table.icc').profile.space).toBe('rgb');
  });

  it.each<readonly [string, Uint8Array, RegExp]>([
    ['no bytes', new Uint8Array(0), /empty/],
    ['a picture', makeArt(), /PNG, a picture/],
    ['a text', text('Sow the marigolds in April.'), /a text/],
    ['a PDF', text('%PDF-1.7\n'), /a PDF/],
    ['bytes of chance', Uint8Array.from({ length: 300 }, (_, i) => (i * 97) % 256), /cannot be used/],
    ['20 MB', new Uint8Array(20_000_000), /20 MB/],
    ['a profile that is cut off', COATED_REFERENCE.subarray(0, 60_000), /truncated|as it states/],
    ['a scanner', renamed('prtr', 'scnr'), /scanner/],
    ['a device link', renamed('prtr', 'link'), /device link/],
    ['a gray display', writeGrayProfile(curveTag([256 * 2.2]), 'XYZ '), /display profile of gray/],
    ['no way back', renamed('B2A', 'X2A'), /no B2A/],
    ['no way forth', renamed('A2B', 'X2B'), /no A2B/],
    ['a CMYK display', renamed('prtr', 'mntr'), /display profile of cmyk/],
  ])('refuses %s, and says what it is and what was expected', (_, bytes, is) => {
    const refusal = () => readCondition(bytes, 'word.icc');
    expect(refusal).toThrow(expect.objectContaining({ code: 'bad-condition', kind: 'usage' }));
    expect(refusal).toThrow(is);
    expect(refusal).toThrow(/"word\.icc".*\nExpected the ICC profile of a printer/);
    expect(refusal).toThrow(BlankcheckError);
  });

  it('takes files up to its limit', () => {
    const padded = new Uint8Array(MAX_CONDITION_BYTES);
    padded.set(COATED_REFERENCE);
    expect(readCondition(padded, 'padded.icc').profile.space).toBe('cmyk');
    expect(() => readCondition(new Uint8Array(MAX_CONDITION_BYTES + 1), 'x')).toThrow(/has 17 MB/);
  });
});
