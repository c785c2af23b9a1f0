import { statSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { quoteForExec, quoteForSh } from '../../../cli/shortcut/quoting.ts';
import { type Dropped, makeShortcut, systemOf } from '../../../cli/shortcut/shortcut.ts';
import { SYSTEMS } from '../../../cli/shortcut/systems.ts';
import { findBlank } from '../../../src/index.ts';
import { askWitness, requireWitness } from '../../witness.ts';
import { runMain } from '../run-main.ts';
import { listFiles, makeFolder, readText } from '../temp-folder.ts';
import { explorerLine, readArtOf, splitWords } from './read-batch-line.ts';
import { readExecLine } from './read-exec-line.ts';

const AWKWARD = `/home/it's "my" $HOME 100% & \`more\`\\^!/木`;
const DROPPED: Dropped = {
  name: 'Blankcheck tile-ceramic-8in',
  node: `${AWKWARD}/node`,
  program: `${AWKWARD}/bin.js`,
  words: ['prepare', '--pause', '--force', '--blank', `${AWKWARD}/tile.json`],
};
const WORDS = [DROPPED.node, DROPPED.program, ...DROPPED.words, '--'];
const MAKE = ['shortcut', '--blank', 'tile-ceramic-8in', '--to', 'Desktop'];
const FILES = {
  linux: ['Desktop/Blankcheck tile-ceramic-8in.desktop', 'Desktop/Blankcheck tile-ceramic-8in.sh'],
  macos: ['Desktop/Blankcheck tile-ceramic-8in.command'],
  windows: ['Desktop/Blankcheck tile-ceramic-8in.cmd'],
} as const;

describe('shortcut', () => {
  it.each(SYSTEMS)('for %s: tells the files that it wrote, and takes them away again', async (system) => {
    const cwd = makeFolder();
    const made = await runMain([...MAKE, '--for', system], { cwd });
    expect([made.code, made.stdout.trimEnd().split('\n')]).toEqual([0, FILES[system]]);
    expect(made.stderr).not.toBe('');
    expect(listFiles(cwd)).toEqual(FILES[system]);
    // Once more over its own, without force.
    expect((await runMain([...MAKE, '--for', system], { cwd })).code).toBe(0);
    const removed = await runMain([...MAKE, '--for', system, '--remove'], { cwd });
    expect([removed.code, removed.stdout.trimEnd().split('\n')]).toEqual([0, FILES[system]]);
    expect(listFiles(cwd)).toEqual([]);
    const again = await runMain([...MAKE, '--for', system, '--remove'], { cwd });
    expect([again.code, again.stderr]).toEqual([2, expect.stringContaining('[no-such-file]')]);
  });

  it('is for this machine where nothing else is said', async () => {
    expect(['win32', 'darwin', 'linux', 'freebsd'].map((one) => systemOf(one as NodeJS.Platform))).toEqual([
      'windows',
      'macos',
      'linux',
      'linux',
    ]);
    const cwd = makeFolder();
    await runMain(MAKE, { cwd });
    expect(listFiles(cwd)).toEqual(FILES[systemOf(process.platform)]);
  });

  it.each([
    ['HOME', '~/Desktop'],
    ['USERPROFILE', '~/Desktop'],
    ['HOME', '~'],
  ])('goes into the home of %s where no shell has put it in place of %s', async (variable, to) => {
    const home = makeFolder();
    const cwd = makeFolder({ '~x/note.txt': '' });
    const words = ['shortcut', '--blank', 'tile-ceramic-8in', '--for', 'windows', '--to'];
    await runMain([...words, to], { cwd, env: { [variable]: home } });
    const name = 'Blankcheck tile-ceramic-8in.cmd';
    expect(listFiles(home)).toEqual([to === '~' ? name : `Desktop/${name}`]);
    expect((await runMain([...words, to, '--remove'], { cwd, env: { [variable]: home } })).code).toBe(0);
    expect(listFiles(home)).toEqual([]);
    // A name that only begins so is one of this folder.
    await runMain([...words, '~x'], { cwd, env: { [variable]: home } });
    expect(listFiles(cwd)).toEqual([`~x/${name}`, '~x/note.txt']);
  });

  it('neither replaces nor removes what is not its own, and replaces by force alone', async () => {
    const [entry, script] = FILES.linux;
    const cwd = makeFolder({ [entry]: '[Desktop Entry]\nName=mine\n', [script]: '#!/bin/sh\n' });
    const linux = [...MAKE, '--for', 'linux'];
    for (const args of [linux, [...linux, '--remove'], [...linux, '--remove', '--force']]) {
      const { code, stdout } = await runMain(args, { cwd });
      expect([code, stdout]).toEqual([1, '']);
    }
    expect(readText(cwd, entry)).toBe('[Desktop Entry]\nName=mine\n');
    expect((await runMain([...linux, '--force'], { cwd })).code).toBe(0);
    expect(readText(cwd, entry)).toContain('Made by blankcheck');
  });

  it('never replaces the record of its blank, even by force', async () => {
    const [entry] = FILES.linux;
    const record = JSON.stringify({ ...findBlank('tile-ceramic-8in') });
    const cwd = makeFolder({ [entry]: record });
    const { code } = await runMain(
      ['shortcut', '--for', 'linux', '--to', 'Desktop', '--blank', entry, '--force'],
      { cwd },
    );
    expect([code, readText(cwd, entry)]).toEqual([1, record]);
  });

  it('asks each time where it is told to', async () => {
    const cwd = makeFolder();
    const { code } = await runMain(['shortcut', '--for', 'linux', '--to', '.', '--ask'], { cwd });
    const words = readExecLine(readText(cwd, 'Blankcheck ask.desktop')).slice(2);
    expect([code, words]).toEqual([0, ['prepare', '--pause', '--force', '--ask', '--', '%F']]);
  });

  it('names the blank so that every folder knows it', async () => {
    const cwd = makeFolder({ 'tag.json': JSON.stringify({ ...findBlank('tag-pet-round'), id: 'tag-own' }) });
    const wordOf = async (blank: string) => {
      const made = await runMain(['shortcut', '--for', 'linux', '--to', '.', '--blank', blank], { cwd });
      return readExecLine(readText(cwd, made.stdout.split('\n')[0]!)).at(-3);
    };
    expect(await wordOf('tag.json')).toBe(join(cwd, 'tag.json'));
    expect(await wordOf('Tag-Pet-Round')).toBe('tag-pet-round');
    expect(await wordOf('8"x10"')).toBe('8inx10in');
  });

  it.each([
    [['--blank', 'tag-pet-round'], 'bad-option'],
    [['--to', '.'], 'missing-blank'],
    [['--to', '.', '--blank', 'tag-pet-round', '--ask'], 'bad-option'],
    [['--to', '.', '--blank', 'tyle'], 'unknown-blank'],
    [['here', '--to', '.', '--blank', 'tag-pet-round'], 'bad-option'],
    [['--to', '.', '--blank', 'tag-pet-round', '--for', 'beos'], 'bad-option'],
  ])('%j is refused: %s', async (args, code) => {
    const cwd = makeFolder();
    const run = await runMain(['shortcut', ...args], { cwd });
    expect([run.code, run.stderr]).toEqual([2, expect.stringContaining(`[${code}]`)]);
    expect(listFiles(cwd)).toEqual([]);
  });
});

describe('for Linux', () => {
  const [entry, script] = makeShortcut('linux', DROPPED).files;

  it('the line of the icon says the same words as desktops read it', () => {
    expect(readExecLine(entry!.text)).toEqual([...WORDS, '%F']);
    expect(readExecLine(`Exec=${quoteForExec('a\nb\tc\rd')}`)).toEqual(['a\nb\tc\rd']);
  });

  it('the icon is valid to the validator of the specification', (context) => {
    requireWitness(context, 'desktop-file-validate');
    const { status, stdout } = askWitness('desktop-file-validate', ['x.desktop'], {
      'x.desktop': entry!.text,
    });
    expect([status, stdout.toString()]).toEqual([0, '']);
  });

  it('the script, and that of macOS, are sound to the linter of shells', (context) => {
    requireWitness(context, 'shellcheck');
    for (const system of ['linux', 'macos'] as const) {
      const { text } = makeShortcut(system, DROPPED).files.at(-1)!;
      // SC2016: what is in single quotes is meant as it stands.
      const { stdout } = askWitness('shellcheck', ['-s', 'sh', '-e', 'SC2016', '-'], {}, text);
      expect(stdout.toString()).toBe('');
    }
  });

  it('both may be started', async () => {
    const cwd = makeFolder();
    await runMain([...MAKE, '--for', 'linux'], { cwd });
    for (const file of FILES.linux) expect(statSync(join(cwd, file)).mode & 0o100).toBe(0o100);
    expect(script!.mode).toBe(0o755);
  });
});

describe('for macOS', () => {
  it('holds the words, quoted, and what it makes takes what is dropped', () => {
    const { text } = makeShortcut('macos', DROPPED).files[0]!;
    for (const word of [...WORDS].slice(0, -1)) expect(text).toContain(quoteForSh(word));
    expect(text).toContain('quoted form of POSIX path of theItem');
    expect(text).toContain('on open theItems');
  });
});

describe('for Windows', () => {
  const program = 'C:\\Users\\It & 100% us!\\木\\bin.js';
  const { text } = makeShortcut('windows', { ...DROPPED, program, words: ['prepare', '--blank', 'tile'] })
    .files[0]!;
  const scripts = [
    'C:\\Users\\Ann\\Desktop\\Blankcheck tile.cmd',
    'C:\\a & b (c)\\x^y!\\Blankcheck tile.cmd',
  ];
  const names = [
    'C:\\art\\pear & quince.png',
    'C:\\art\\pear&quince.png',
    'C:\\art\\100%PATH%.png',
    'C:\\art\\^caret^.png',
    'C:\\art\\!bang!.png',
    "C:\\art\\it's;a=b,(c).png",
    'C:\\art\\木 é.png',
    'C:\\a c \\--force.png',
  ];

  it.each(scripts)('finds every name that was dropped in the line of %s', (script) => {
    expect(splitWords(readArtOf(text, explorerLine(script, names)))).toEqual(names);
    for (const name of names)
      expect(splitWords(readArtOf(text, explorerLine(script, [name])))).toEqual([name]);
    expect(readArtOf(text, explorerLine(script, []))).toBe('');
  });

  it('has line ends of Windows, sets paths before anything in them is special, and ends its window', () => {
    expect(text.split('\r\n').join('')).not.toMatch(/[\r\n]/);
    const lines = text.split('\r\n');
    const at = (start: string) => lines.findIndex((line) => line.startsWith(start));
    expect(lines[at('set "program=')]).toBe(`set "program=${program.replace('%', '%%')}"`);
    expect(at('chcp 65001')).toBeLessThan(at('set "node='));
    expect(at('set "word0=')).toBeLessThan(at('setlocal EnableDelayedExpansion'));
    expect(lines.at(-2)).toBe('exit');
    // Nothing is read as a variable of percent signs, or as an argument.
    expect(text.replaceAll('%%', '')).not.toContain('%');
  });
});
