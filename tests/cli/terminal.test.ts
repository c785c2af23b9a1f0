import { describe, expect, it } from 'vitest';
import { describeTerminal } from '../../cli/terminal.ts';

const screen = { isTTY: true, columns: 120 };
const pipe = { isTTY: false };
type Case = [
  what: string,
  stream: typeof screen | typeof pipe,
  env: Record<string, string>,
  options: object,
  colour: boolean,
];

describe('colour', () => {
  const cases: Case[] = [
    ['on a terminal', screen, {}, {}, true],
    ['not in a pipe', pipe, {}, {}, false],
    ['not with --no-colour', screen, {}, { colour: false }, false],
    ['not with --no-color', screen, {}, { color: false }, false],
    ['not with --no-colour, even if forced', screen, { FORCE_COLOR: '1' }, { colour: false }, false],
    ['not with NO_COLOR', screen, { NO_COLOR: '1' }, {}, false],
    ['with an empty NO_COLOR, which says nothing', screen, { NO_COLOR: '' }, {}, true],
    ['in a pipe with FORCE_COLOR', pipe, { FORCE_COLOR: '1' }, {}, true],
    ['in a pipe with an empty FORCE_COLOR', pipe, { FORCE_COLOR: '' }, {}, true],
    ['not with FORCE_COLOR=0', screen, { FORCE_COLOR: '0' }, {}, false],
    ['with FORCE_COLOR against NO_COLOR', pipe, { FORCE_COLOR: '1', NO_COLOR: '1' }, {}, true],
    ['not on a dumb terminal', screen, { TERM: 'dumb' }, {}, false],
    ['not in CI', screen, { CI: 'true' }, {}, false],
    ['where CI=false', screen, { CI: 'false' }, {}, true],
    ['in CI with FORCE_COLOR', pipe, { CI: 'true', FORCE_COLOR: '3' }, {}, true],
  ];
  it.each(cases)('%s', (_, stream, env, options, colour) =>
    expect(describeTerminal(stream, env, options).colour).toBe(colour),
  );
});

it('the width is that of the terminal, else 80', () => {
  expect(describeTerminal(screen, {}, {}).width).toBe(120);
  expect(describeTerminal(pipe, {}, {}).width).toBe(80);
  expect(describeTerminal({ isTTY: true, columns: 0 }, {}, {}).width).toBe(80);
});
