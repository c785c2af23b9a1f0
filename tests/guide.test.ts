import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parseArguments } from '../cli/arguments.ts';
import { findBlank } from '../src/catalogue/catalogue.ts';
import { CHECKS } from '../src/checks/index.ts';

const guide = readFileSync(new URL('../docs/guide.md', import.meta.url), 'utf8');

/** What a reader would type: lines of code blocks, and commands within the text. */
const commands = [
  ...[...guide.matchAll(/^ *(blankcheck .*)$/gm)].map(([, line]) => line!),
  ...[...guide.matchAll(/`(blankcheck [^`]*)`/g)].map(([, line]) => line!),
];

describe('the guide', () => {
  it('has every part that it is to have', () => {
    const titles = [...guide.matchAll(/^## (.*)$/gm)].map(([, title]) => title);
    expect(titles).toEqual([
      'The first tile in five minutes',
      'The marks on the sheet',
      'A mug, a tumbler',
      'Slate',
      'Glass',
      'Cloth',
      'What to ask for it',
      'Why it came out small',
      'Why it came out dull',
      'A picture dropped on an icon',
      'A folder of downloads',
    ]);
    expect(commands.length).toBeGreaterThan(12);
  });

  it.each(commands)('can be typed: %s', async (line) => {
    const request = await parseArguments(line.split(' ').slice(1));
    if (request.wants !== 'run') throw new Error(`not a run: ${line}`);
    const { command, operands, options } = request;
    if (options.blank !== undefined) expect(findBlank(options.blank)).toBeDefined();
    if (command === 'press') expect(findBlank(operands[0]!)).toBeDefined();
    if (command === 'explain') expect(CHECKS.map(({ id }) => id)).toContain(operands[0]);
  });
});
