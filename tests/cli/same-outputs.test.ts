import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder } from './temp-folder.ts';

const PRINT = 'out/pear.20x20mm.png';

/** What was announced as written would be another file. */
describe('outputs of one run under one name', () => {
  it.each([
    [`prepare --out out --csv ${PRINT}`, 2],
    [`prepare --out out --report ${PRINT}`, 2],
    [`prepare --out out --report ${PRINT.toUpperCase()}`, 2],
    ['prepare --out out --csv list.txt --report ./list.txt', 2],
    ['prepare --out out --csv list.csv --report list.html', 0],
    ['prepare --out out --csv -', 2],
    ['prepare --out out --report ./beds', 2],
    ['prepare --out out --csv ./-', 0],
    [`check --csv ${PRINT}`, 0],
  ])('%s: exit code %d', async (words, code) => {
    const cwd = makeFolder({ 'pear.png': makeArt([220, 0, 0], 300), 'beds/notes.txt': '' });
    const [command, ...options] = words.split(' ');
    const run = await runMain([command!, 'pear.png', '--blank', '20x20mm', '--force', ...options], { cwd });
    expect(run.code).toBe(code);
    expect(run.stderr.includes('[bad-option]')).toBe(code === 2);
    expect(existsSync(join(cwd, 'out'))).toBe(code === 0);
  });
});
