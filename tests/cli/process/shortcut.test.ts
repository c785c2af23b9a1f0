import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { quoteForSh } from '../../../cli/shortcut/quoting.ts';
import { makeShortcut } from '../../../cli/shortcut/shortcut.ts';
import type { System } from '../../../cli/shortcut/systems.ts';
import { makeArt } from '../art.ts';
import { readExecLine } from '../shortcut/read-exec-line.ts';
import { listFiles, makeFolder } from '../temp-folder.ts';
import { buildCommand, runCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 60_000 });
beforeAll(() => void buildCommand(), 60_000);

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
  '-n.png',
  '!bang!.png',
  'tab\tbed.png',
  'line\nbed.png',
  '* ?[a].png',
  'back\\slash.png',
];
const MADE = NAMES.map(
  (name) => `print-ready/${name.replace(/["\t\n*?\\]/g, '_').replace(/\.png$/, '')}.${BLANK}.png`,
);
const layArt = () => makeFolder(Object.fromEntries(NAMES.map((name) => [name, ART])));
/** As they are listed, with `/` for every backslash. */
const all = [...NAMES, ...MADE].map((name) => name.replaceAll('\\', '/')).sort();
const run = (command: string, args: readonly string[], cwd: string) =>
  spawnSync(command, args, { cwd, env: { PATH: '/usr/bin:/bin' }, encoding: 'utf8', input: '' });

/** The shortcut of a program in a folder whose name is as awkward as folders get; the path of its last file. */
function layShortcut(system: System): string {
  const root = join(makeFolder(), `it's "my" $HOME 100% & \`more\`\\`);
  mkdirSync(root, { recursive: true });
  symlinkSync(dirname(dirname(buildCommand())), join(root, 'dist'));
  const { files } = makeShortcut(system, {
    name: 'Blankcheck',
    node: process.execPath,
    program: join(root, 'dist', 'cli', 'bin.js'),
    words: ['prepare', '--pause', '--force', '--blank', BLANK],
  });
  for (const { name, text, mode } of files) writeFileSync(join(root, name), text, { mode });
  return join(root, files.at(-1)!.name);
}

describe('what is dropped on a shortcut is prepared, whatever it is called', () => {
  it.each(['sh', 'bash'])('Linux: the script, by %s', (shell) => {
    const art = layArt();
    const { status, stderr } = run(shell, [layShortcut('linux'), ...NAMES], art);
    expect([status, stderr]).toEqual([0, expect.not.stringContaining('blankcheck: ')]);
    expect(listFiles(art)).toEqual(all);
  });

  it('Linux: the icon', () => {
    const art = layArt();
    const entry = readFileSync(layShortcut('linux').replace(/\.sh$/, '.desktop'), 'utf8');
    const [command, ...words] = readExecLine(entry);
    expect(words.at(-1)).toBe('%F');
    const dropped = [...words.slice(0, -1), ...NAMES.map((name) => join(art, name))];
    expect(run(command!, dropped, makeFolder()).status).toBe(0);
    expect(listFiles(art)).toEqual(all);
  });

  it('macOS: the script, from the list that its icon writes, which is removed', () => {
    const art = layArt();
    writeFileSync(join(art, 'list'), NAMES.map((name) => `${quoteForSh(name)} `).join(''));
    expect(run('sh', [layShortcut('macos'), '--list', 'list'], art).status).toBe(0);
    expect(listFiles(art)).toEqual(all);
  });
});

describe('a shortcut', () => {
  it('of the program that runs starts that very program', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const made = await runCommand(['shortcut', '--for', 'linux', '--blank', BLANK, '--to', 'here'], { cwd });
    expect([made.code, made.stderr]).toEqual([0, expect.stringContaining('Drop pictures')]);
    expect(run('sh', [`here/Blankcheck ${BLANK}.sh`, 'pear.png'], cwd).status).toBe(0);
    expect(listFiles(cwd)).toContain(`print-ready/pear.${BLANK}.png`);
    const icon = readFileSync(join(cwd, `here/Blankcheck ${BLANK}.desktop`), 'utf8');
    expect(readExecLine(icon).slice(0, 2)).toEqual([process.execPath, buildCommand()]);
  });

  it('passes the exit code on, says what to do where nothing was dropped, and where the program is gone', () => {
    const script = layShortcut('linux');
    expect(run('sh', [script, 'none.png'], '/').status).toBe(2);
    expect(run('sh', [script], '/')).toMatchObject({ status: 0, stdout: expect.stringContaining('Drop') });
    writeFileSync(script, readFileSync(script, 'utf8').replaceAll('bin.js', 'gone.js'));
    const gone = run('sh', [script, 'pear.png'], '/');
    expect([gone.status, gone.stdout]).toEqual([2, expect.stringContaining('gone.js')]);
  });
});
