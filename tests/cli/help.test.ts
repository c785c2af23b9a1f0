import { describe, expect, it } from 'vitest';
import { parseArguments } from '../../cli/arguments.ts';
import { COMMANDS } from '../../cli/command-table.ts';
import { renderHelp } from '../../cli/help.ts';
import { OPTIONS } from '../../cli/options.ts';
import { findBlank, searchBlanks } from '../../src/index.ts';
import { expectGolden } from '../golden.ts';
import { runMain } from './run-main.ts';

/** Commands whose examples name no blank. */
const OTHERS: readonly string[] = [
  'calibrate',
  'suits',
  'inspect',
  'history',
  'explain',
  'completions',
  'config',
];

describe('--help', () => {
  it.each([null, ...COMMANDS.map(({ name }) => name)])('about %s', async (about) => {
    expectGolden(`help/${about ?? 'all'}.txt`, await renderHelp(about, 80));
  });

  it('goes to standard output, keeps to the width, and is clean', async () => {
    const { code, stdout, stderr } = await runMain(['check', '--help'], { cwd: '.' });
    expect([code, stderr]).toEqual([0, '']);
    expect(stdout).toBe(await renderHelp('check', 80));
    const lines = (await renderHelp(null, 80)).split('\n');
    const prose = lines.filter((line) => !line.startsWith('  blankcheck '));
    expect(Math.max(...prose.map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it('tells every option that is offered, and none that is refused', async () => {
    const text = await renderHelp(null, 80);
    for (const { flags, hidden, of } of OPTIONS)
      if (of.includes('prepare')) expect(text.includes(`  ${flags} `)).toBe(!hidden);
    expect(text).toContain('pdf');
  });

  it('gives examples that can be typed: they parse, and their blanks are in the catalogue', async () => {
    for (const example of COMMANDS.flatMap(({ examples }) => examples)) {
      const [program, ...words] = example.replace(/ >.*$/, '').split(' ');
      expect(program).toBe('blankcheck');
      const request = await parseArguments(words);
      if (request.wants !== 'run') throw new Error(`not a run: ${example}`);
      if (request.command === 'limits') continue;
      if (OTHERS.includes(request.command) || request.options.ask) continue;
      const blank = request.command === 'press' ? request.operands[0] : request.options.blank;
      if (request.command === 'blanks') expect(searchBlanks(request.operands)).not.toHaveLength(0);
      else if (!/^(?:round:|\d)/.test(blank!)) expect(findBlank(blank!)).toBeDefined();
    }
  });
});
