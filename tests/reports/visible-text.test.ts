import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { escapeJsonText, showHidden } from '../../src/reports/visible-text.ts';

describe('showHidden', () => {
  it.each([
    ['\u001b[2J', '\\u001b[2J'],
    ['a\nb\rc\td', 'a\\nb\\rc\\td'],
    ['\u009b31m', '\\u009b31m'],
    ['pear\u202egnp.exe', 'pear\\u202egnp.exe'],
    ['a\u2028b', 'a\\u2028b'],
    ['\ud800x', '\\ud800x'],
    ['pear\u200b.png', 'pear\\u200b.png'],
  ])('%j becomes %j', (text, shown) => {
    expect(showHidden(text)).toBe(shown);
  });

  it.each(['pear (1) – größer.png', 'إجاص.png', '梨の絵.png', '👩‍🌾.png', 'C:\\art\\new.png', 'می‌خواهم'])(
    'leaves %s as it is',
    (text) => {
      expect(showHidden(text)).toBe(text);
    },
  );
});

describe('escapeJsonText', () => {
  it('changes no value, lone surrogates and all', () => {
    const codeUnit = fc.integer({ min: 0, max: 0xffff }).map((code) => String.fromCharCode(code));
    fc.assert(
      fc.property(fc.array(fc.string({ unit: codeUnit })), (texts) => {
        expect(JSON.parse(escapeJsonText(JSON.stringify(texts, null, 2)))).toEqual(texts);
      }),
      { seed: 20_240_303 },
    );
  });
});
