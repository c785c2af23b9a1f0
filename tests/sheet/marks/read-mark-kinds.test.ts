import { describe, expect, it } from 'vitest';
import { OPTIONS } from '../../../cli/options.ts';
import { MARK_KINDS } from '../../../src/sheet/marks/mark-kinds.ts';
import { readMarkKinds } from '../../../src/sheet/marks/read-mark-kinds.ts';

const read = (text: string) => {
  try {
    return readMarkKinds(text);
  } catch (error) {
    return (error as { code: string }).code;
  }
};

describe('readMarkKinds', () => {
  it.each([
    ['ruler', ['ruler']],
    [' STEP-WEDGE, label,step-wedge,', ['label', 'step-wedge']],
    [MARK_KINDS.join(), MARK_KINDS],
    ['ruler,rulers', 'unknown-mark'],
    ['', 'unknown-mark'],
    [',', 'unknown-mark'],
  ])('"%s"', (text, expected) => expect(read(text)).toEqual(expected));

  it('says which mark may have been meant', () => {
    expect(() => readMarkKinds('wedge')).toThrow('step-wedge');
  });

  it('is told of every mark by the help', () => {
    const { help } = OPTIONS.find(({ flags }) => flags.startsWith('--omit-marks'))!;
    for (const kind of MARK_KINDS) expect(help).toContain(kind);
  });
});
