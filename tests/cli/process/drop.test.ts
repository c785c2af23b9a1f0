import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, statSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { findBlank } from '../../../src/index.ts';
import { makeArt } from '../art.ts';
import { listFiles, makeFolder, putFiles } from '../temp-folder.ts';
import { buildCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 60_000 });
beforeAll(() => void buildCommand(), 60_000);

const DROP = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', 'cli', 'drop');
const LINUX = 'linux/blankcheck-drop.sh';
const MACOS = 'macos/blankcheck-drop.command';
const WINDOWS = 'windows/blankcheck-drop.ps1';
/** Sharp enough for a pet tag. */
const ART = makeArt([40, 120, 60], 300);
const BLANK = 'tag-pet-round';
const NAMES = [
  'pear & quince.png',
  "it's 100%.png",
  'a"b.png',
  '^caret^.png',
  '$(touch hurt).png',
  '`x`;y.png',
  '木 é.png',
  '--force.png',
  '!bang!.png',
  'tab\tbed.png',
];
const MADE = NAMES.map(
  (name) => `print-ready/${name.replace(/["\t]/g, '_').replace(/\.png$/, '')}.${BLANK}.png`,
).sort();

/** An installed package in a folder whose name is as awkward as folders get, the blank set as its maker would. */
function installPackage(): string {
  const root = join(makeFolder(), `it's "my" $HOME 100% & \`more\`\\`);
  mkdirSync(join(root, 'dist'), { recursive: true });
  cpSync(DROP, join(root, 'cli', 'drop'), { recursive: true });
  for (const file of [LINUX, MACOS]) {
    const script = join(root, 'cli', 'drop', file);
    writeFileSync(
      script,
      readFileSync(script, 'utf8').replace("BLANK='tile-ceramic-8in'", `BLANK='${BLANK}'`),
    );
  }
  symlinkSync(dirname(buildCommand()), join(root, 'dist', 'cli'));
  return join(root, 'cli', 'drop');
}

const layArt = () => makeFolder(Object.fromEntries(NAMES.map((name) => [name, ART])));
const run = (command: string, args: readonly string[], cwd: string, env: NodeJS.ProcessEnv = {}) =>
  spawnSync(command, args, { cwd, env: { ...process.env, ...env }, encoding: 'utf8', input: '' });

describe.each([LINUX, MACOS, WINDOWS])('%s', (file) => {
  const text = readFileSync(join(DROP, file), 'utf8');

  it('says near its top where to set the blank, and the blank is one of the catalogue', () => {
    const line = text.split('\n').findIndex((row) => /^\$?BLANK ?= ?'/i.test(row));
    expect(line).toBeGreaterThan(0);
    expect(line).toBeLessThan(10);
    const blank = /'([^']+)'/.exec(text.split('\n')[line]!)![1]!;
    expect(findBlank(blank)?.id).toBe(blank);
    expect(text.split('\n')[line - 2]).toContain('Set the blank');
  });

  it('ends options before what is dropped, and keeps the window open', () => {
    expect(text).toMatch(/prepare --pause --force --blank "[^"]+" --(?: "\$@"|')/);
  });

  it('is plain ASCII with the line ends of its system', () => {
    expect(text).toMatch(/^[\n\x20-\x7e]+$/);
  });
});

describe('the shell scripts', () => {
  it.each([LINUX, MACOS])('%s may be run and is sound to sh', (file) => {
    expect(statSync(join(DROP, file)).mode & 0o111).toBe(0o111);
    expect(run('sh', ['-n', join(DROP, file)], '.').status).toBe(0);
  });

  it('Linux: makes an icon whose command line, read as desktops read it, prepares what is dropped', () => {
    const script = join(installPackage(), LINUX);
    const home = makeFolder();
    const made = run('sh', [script], home, { HOME: home, PATH: process.env.PATH, XDG_CONFIG_HOME: home });
    expect(made.stderr).toBe('');
    const [icon = ''] = listFiles(home);
    expect(icon).toBe(`Desktop/Blankcheck ${BLANK}.desktop`);
    const words = readExecLine(readFileSync(join(home, icon), 'utf8'));
    expect(words.at(-1)).toBe('%F');
    const art = layArt();
    const paths = NAMES.map((name) => join(art, name));
    const dropped = run(words[0]!, [...words.slice(1, -1), ...paths], home, { PATH: '/usr/bin:/bin' });
    expect(dropped.stderr).not.toContain('blankcheck: ');
    expect(listFiles(art)).toEqual([...NAMES, ...MADE].sort());
  });

  it('Linux: takes files itself, and passes the exit code on', () => {
    const script = join(installPackage(), LINUX);
    const art = layArt();
    expect(run('sh', [script, ...NAMES], art).status).toBe(0);
    expect(listFiles(art)).toEqual([...NAMES, ...MADE].sort());
    expect(run('sh', [script, 'none.png'], art).status).toBe(2);
  });

  it('macOS: reads what was dropped from a list, a path a line, and removes the list', () => {
    const script = join(installPackage(), MACOS);
    const art = layArt();
    putFiles(art, { list: NAMES.map((name) => `${name}\n`).join('') });
    expect(run('sh', [script, '--list', 'list'], art).status).toBe(0);
    expect(listFiles(art)).toEqual([...NAMES, ...MADE].sort());
  });
});

/** The words of the Exec key: Desktop Entry Specification 1.5, "Basic format of the file" (escapes) and "The Exec key". */
function readExecLine(entry: string): string[] {
  const raw = /^Exec=(.*)$/m.exec(entry)![1]!;
  const text = raw.replace(
    /\\([\\snrt])/g,
    (_, character: string) => ({ s: ' ', n: '\n', r: '\r', t: '\t' })[character] ?? character,
  );
  return [...text.matchAll(/"((?:[^"\\]|\\.)*)"|(\S+)/g)].map(([, quoted, plain]) =>
    quoted === undefined ? plain! : quoted.replace(/\\(["`$\\])/g, '$1').replaceAll('%%', '%'),
  );
}
