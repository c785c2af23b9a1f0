import { beforeAll, describe, expect, it, vi } from 'vitest';
import { requireWitness } from '../../witness.ts';
import { makeArt } from '../art.ts';
import { listFiles, makeFolder } from '../temp-folder.ts';
import { runAtTerminal } from './at-terminal.ts';
import { buildCommand } from './built-command.ts';

vi.setConfig({ testTimeout: 60_000 });
beforeAll(() => void buildCommand(), 60_000);

const ART = makeArt([40, 120, 60], 300);
const ENTER = '\r';
const DOWN = '\x1b[B';
const CTRL_C = '\x03';
const DROPPED = ['prepare', '--pause', '--ask', '--', 'pear & quince.png'];

describe('--ask at a terminal', () => {
  it('finds the blank by a word, takes the size from the list, writes the file and waits for Return', async (context) => {
    requireWitness(context, 'script');
    const cwd = makeFolder({ 'pear & quince.png': ART });
    const { code, shown } = await runAtTerminal(DROPPED, cwd, [
      ['Which blank?', 'pet tag'],
      ['pet tag█', ENTER],
      ['How large', ENTER],
      ['Press Return to close', ENTER],
    ]);
    expect(shown).toContain('How to print it');
    expect([code, listFiles(cwd)]).toEqual([
      0,
      ['pear & quince.png', 'print-ready/pear & quince.tag-pet-round.png'],
    ]);
  });

  it('takes what is chosen by arrow, and a width that is typed', async (context) => {
    requireWitness(context, 'script');
    const cwd = makeFolder({ 'pear & quince.png': ART });
    const { code } = await runAtTerminal(DROPPED, cwd, [
      ['Which blank?', '60x60mm'],
      ['60 x 60 mm', ENTER],
      ['How large', '20mm'],
      ['wide', ENTER],
      ['Press Return to close', ENTER],
    ]);
    expect([code, listFiles(cwd)]).toEqual([
      0,
      ['pear & quince.png', 'print-ready/pear & quince.60x60mm.png'],
    ]);
    const checked = await runAtTerminal(['check', '--ask', '--blank', '60x60mm', 'pear & quince.png'], cwd, [
      ['How large', DOWN],
      ['● over', ENTER],
    ]);
    expect(checked.shown).toContain('below-stop');
  });

  it('says what fits where nothing does, and goes on', async (context) => {
    requireWitness(context, 'script');
    const cwd = makeFolder({ 'pear & quince.png': ART });
    const { code } = await runAtTerminal(['check', '--ask', '--fit', 'inside', 'pear & quince.png'], cwd, [
      ['Which blank?', 'zzzz'],
      ['No matches', ENTER],
      ['No blank fits', CTRL_C],
    ]);
    expect(code).toBe(130);
  });

  it.each([
    ['Ctrl-C', CTRL_C],
    ['Escape', '\x1b'],
  ])('%s ends the run as an interrupt does, with nothing written and nothing waited for', async (_, key) => {
    const cwd = makeFolder({ 'pear & quince.png': ART });
    const { code, shown } = await runAtTerminal(DROPPED, cwd, [['Which blank?', key]]);
    expect([code, listFiles(cwd)]).toEqual([130, ['pear & quince.png']]);
    expect(shown).toContain('interrupted');
    expect(shown).not.toContain('Press Return');
  });
});
