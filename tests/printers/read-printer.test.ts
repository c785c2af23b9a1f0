import { Ajv2020 } from 'ajv/dist/2020.js';
import { parse } from 'jsonc-parser';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { readPrinter } from '../../src/printers/read-printer.ts';
import { readSeed } from '../catalogue/seed-files.ts';
import { PLAIN_PRINTER, SHED_PRINTER } from './printer-texts.ts';

async function faultOf(text: string): Promise<string> {
  const error = await readPrinter(text, 'shed.json').then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(BlankcheckError);
  expect((error as BlankcheckError).code).toBe('bad-printer-record');
  return (error as BlankcheckError).message;
}

describe('readPrinter', () => {
  it('reads a record with comments and a comma too many', async () => {
    expect(await readPrinter(SHED_PRINTER, 'shed.json')).toEqual({
      name: 'Potting shed',
      paper: { id: 'letter', widthMm: 215.9, heightMm: 279.4 },
      marginsMm: { left: 3.4, right: 3.4, lead: 3.4, trail: 5 },
      ppi: 360,
      scaleCorrection: { scan: 1, feed: 1.004 },
      profile: 'shed.icc',
      driverMirrors: true,
    });
  });

  it('takes an unknown printer for what is left out', async () => {
    const margin = 6.35;
    expect(await readPrinter(PLAIN_PRINTER, 'stall.json')).toEqual({
      name: 'Stall',
      paper: { id: 'a4', widthMm: 210, heightMm: 297 },
      marginsMm: { left: margin, right: margin, lead: margin, trail: margin },
      scaleCorrection: { scan: 1, feed: 1 },
      driverMirrors: false,
    });
  });

  it('takes a size for paper, portrait whichever way it is written, and passes over a byte order mark', async () => {
    const { paper } = await readPrinter('\ufeff{"name":"a","paper":"30x20cm"}', 'a');
    expect(paper).toEqual({ id: '30x20cm', widthMm: 200, heightMm: 300 });
  });

  const at = (body: string) => `{\n"name": "Stall",\n"paper": "a4",\n${body}\n}`;
  it.each([
    ['nothing', '', ['line 1', 'a value']],
    ['no JSON', 'name: Stall', ['line 1', 'JSON']],
    ['a comma that is missing', '{\n"name": "Stall"\n"paper": "a4"}', ['line 3', 'a comma']],
    ['a text that does not end', '{\n"name": "Stall\n}', ['line 2', 'closing quote']],
    ['a brace that is missing', '{\n"name": "Stall"', ['line 2', 'closing }']],
    ['more after it', '{"name": "a", "paper": "a4"}\n{}', ['line 2', 'nothing more']],
    ['a field twice', '{"name": "a",\n"paper": "a4",\n"name": "b"}', ['line 3', 'each field once']],
    ['a list', '\n[]', ['line 2', 'one printer', 'a list']],
    ['a number', '7', ['line 1', 'one printer', '7']],
    ['no name', '{\n"paper": "a4"}', ['line 1', 'name', 'a text', 'nothing']],
    ['a text for a number', at('"ppi": "360"'), ['line 4', 'ppi', 'a number', '"360"']],
    ['too few pixels', at('"ppi": 0.5'), ['line 4', 'ppi', 'at least 1', '0.5']],
    ['too many pixels', at('"ppi": 2401'), ['line 4', 'ppi', 'at most 2400', '2401']],
    ['a mistyped field', at('\n"pip": 360'), ['line 5', 'pip', 'meant ppi']],
    [
      'a margin that is missing',
      at('"marginsMm": { "left": 3 }'),
      ['line 4', 'marginsMm.right', 'millimetres'],
    ],
    [
      'a mistyped margin',
      at('"marginsMm": {\n"left": 3, "right": 3, "lead": 3,\n"tail": 3, "trail": 3 }'),
      ['line 6', 'marginsMm.tail', 'meant trail'],
    ],
    [
      'a margin below 0',
      at('"marginsMm": {\n"left": -1, "right": 3, "lead": 3, "trail": 3 }'),
      ['line 5', 'marginsMm.left', 'at least 0', '-1'],
    ],
    [
      'margins wider than the page',
      at('"marginsMm": { "left": 100, "right": 100, "lead": 3, "trail": 3 }').replace('a4', 'a5'),
      ['line 4', 'marginsMm', '148', '200'],
    ],
    [
      'margins higher than the page',
      at('"marginsMm": { "left": 3, "right": 3, "lead": 100, "trail": 100 }').replace('a4', 'a6'),
      ['line 4', 'marginsMm', '148', '200'],
    ],
    [
      'an unknown sheet',
      '{"name": "a",\n"paper": "lettre"}',
      ['line 2', 'paper', 'meant letter', '"lettre"'],
    ],
    ['a size without a unit', '{"name": "a",\n"paper": "200x300"}', ['line 2', 'paper', '"200x300"']],
    ['a round paper', '{"name": "a",\n"paper": "round:95mm"}', ['line 2', 'paper']],
    [
      'a correction of 5 %',
      at('"scaleCorrection": {\n"scan": 1,\n"feed": 1.05 }'),
      ['line 6', 'scaleCorrection.feed', 'at most 1.02', '1.05'],
    ],
    ['a word for yes', at('"driverMirrors": "yes"'), ['line 4', 'driverMirrors', 'true or false', '"yes"']],
    ['a name over two lines', '{"name": "a\\nb", "paper": "a4"}', ['line 1', 'name', 'one line']],
  ])('names line, field and what was expected: %s', async (_, text, parts) => {
    const message = await faultOf(text);
    expect(message).toContain('shed.json');
    for (const part of parts) expect(message).toContain(part);
  });

  // Second implementation: ajv 8 reads the shipped JSON Schema.
  it('agrees with the schema that ships', async () => {
    const validate = new Ajv2020({ strict: true }).compile(readSeed('schema/printer.schema.json') as object);
    for (const text of [SHED_PRINTER, PLAIN_PRINTER]) expect(validate(parse(text))).toBe(true);
    for (const body of [
      '"ppi": 0',
      '"pip": 3',
      '"marginsMm": {}',
      '"scaleCorrection": {"scan": 2, "feed": 1}',
    ])
      expect(validate(parse(at(body))), body).toBe(false);
  });
});
