import { execFileSync } from 'node:child_process';
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { COMMANDS } from '../cli/command-table.ts';
import { CHECKS } from '../src/checks/index.ts';
import { MENDS } from '../src/mends/index.ts';
import { renderCheckTable } from '../src/reports/check-table.ts';
import { renderMendTable } from '../src/reports/mend-table.ts';
import { VERSION } from '../src/version.ts';
import { blockRaster } from './pictures.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const readmePath = join(root, 'README.md');
const readme = readFileSync(readmePath, 'utf8');
const packageJson = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
const bin = join(root, 'dist', 'cli', 'bin.js');

describe('README', () => {
  it('its table of checks is made from the checks themselves', () => {
    const between = /(<!-- checks:[^>]*-->\n)([\s\S]*?)(<!-- \/checks -->)/;
    const table = renderCheckTable(CHECKS);
    if (process.env.UPDATE === '1')
      writeFileSync(
        readmePath,
        readme.replace(between, (_, open, __, close) => `${open}\n${table}\n${close}`),
      );
    else expect(between.exec(readme)?.[2]?.trim()).toBe(table.trim());
  });

  it('its table of mends is made from the mends themselves', () => {
    const now = readFileSync(readmePath, 'utf8');
    const between = /(<!-- mends:[^>]*-->\n)([\s\S]*?)(<!-- \/mends -->)/;
    const table = renderMendTable(MENDS);
    if (process.env.UPDATE === '1')
      writeFileSync(
        readmePath,
        now.replace(between, (_, open, __, close) => `${open}\n${table}\n${close}`),
      );
    else expect(between.exec(now)?.[2]?.trim()).toBe(table.trim());
  });

  it('states the job in its first paragraph and names the two commands for a fresh machine', () => {
    expect(readme.split('\n\n')[1]).toContain('blanks');
    expect(readme).toContain('npm ci && npm run demo');
    expect(readme).toContain('npm cit');
  });

  it('every check and every long option it names exists', () => {
    const help = COMMANDS.map(({ name }) =>
      execFileSync(process.execPath, [bin, name, '--help'], { encoding: 'utf8' }),
    ).join('\n');
    const named = new Set([...readme.matchAll(/`(--[a-z-]+)/g)].map(([, option]) => option!));
    for (const option of named) expect(help).toContain(option);
  });
});

describe('the examples of the README run', () => {
  let folder: string;
  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'blankcheck-docs-'));
    mkdirSync(join(folder, 'node_modules'));
    symlinkSync(root, join(folder, 'node_modules', 'blankcheck'), 'junction');
    const { data, widthPx, heightPx } = blockRaster([2400, 2400], {
      x: 100,
      y: 100,
      width: 2200,
      height: 2200,
    });
    const raw = { width: widthPx, height: heightPx, channels: 4 } as const;
    await sharp(data, { raw }).png().toFile(join(folder, 'potting-shed.png'));
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it('the command at the top writes one print-ready file and says where it is', () => {
    const line = /^\$ blankcheck (.*)$/m.exec(readme)![1]!;
    const stdout = execFileSync(process.execPath, [bin, ...line.split(' ')], {
      cwd: folder,
      encoding: 'utf8',
    });
    expect(stdout).toBe(`${join('print-ready', 'potting-shed.tile-ceramic-8in.png')}\n`);
    expect(readdirSync(join(folder, 'print-ready'))).toEqual(['potting-shed.tile-ceramic-8in.png']);
  });

  it('the program prints the verdict and writes the bytes', () => {
    const code = /```js\n([\s\S]*?)```/.exec(readme)![1]!;
    writeFileSync(join(folder, 'example.mjs'), code);
    const stdout = execFileSync(process.execPath, ['example.mjs'], { cwd: folder, encoding: 'utf8' });
    expect(stdout.split('\n')[0]).toMatch(/^ready \{ x: 314\.\d+, y: 314\.\d+ \}$/);
    expect(readdirSync(folder)).toContain('potting-shed.print-ready.png');
  });
});

describe('package', () => {
  it('the version in the code is that of the package', () => expect(VERSION).toBe(packageJson.version));

  it('every runtime package has its reason in DEVELOPERS.md', () => {
    const developers = readFileSync(join(root, 'DEVELOPERS.md'), 'utf8');
    for (const name of Object.keys(packageJson.dependencies)) expect(developers).toContain(`| ${name} |`);
  });
});
