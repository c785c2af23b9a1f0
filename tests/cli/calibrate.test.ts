import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { readPrinter } from '../../src/printers/read-printer.ts';
import { SHED_PRINTER } from '../printers/printer-texts.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder } from './temp-folder.ts';

const ARGS = ['calibrate', '--printer', 'shed.json', '--ruler'];

const schema = JSON.parse(
  readFileSync(new URL('../../seeds/schema/calibration.schema.json', import.meta.url), 'utf8'),
);
const fulfilsSchema = new Ajv2020({ strict: true, strictTypes: false, strictRequired: false }).compile(
  schema,
);

async function calibrate(text: string, ...args: string[]) {
  const cwd = makeFolder({ 'shed.json': text });
  const run = await runMain(args, { cwd });
  return { ...run, files: listFiles(cwd), text: readFileSync(join(cwd, 'shed.json'), 'utf8') };
}

describe('calibrate', () => {
  it('stores a small correction and leaves all else in the file', async () => {
    const run = await calibrate(SHED_PRINTER, ...ARGS, '100mm,99.9mm');
    expect(run).toMatchObject({ code: 0, stdout: '', files: ['shed.json'] });
    expect(run.text).toBe(SHED_PRINTER.replace('1.004', '1.005005'));
  });

  const added = '"scaleCorrection": { "scan": 1, "feed": 1.004016 }';
  it.each([
    [
      '{\r\n\t"name": "a",\r\n\t"paper": "a4" // stall\r\n}\r\n',
      `{\r\n\t"name": "a",\r\n\t"paper": "a4", // stall\r\n\t${added}\r\n}\r\n`,
    ],
    ['\ufeff{"name": "a", "paper": "a4"}', `\ufeff{"name": "a", "paper": "a4", ${added}}`],
    [
      '{\n  "paper": "a4", "name": "a",\n  // end\n}\n// after\n',
      `{\n  "paper": "a4", "name": "a",\n  // end\n  ${added}\n}\n// after\n`,
    ],
    [
      '{\n  "name": "a", "paper": "a4",\n  "marginsMm": {"left":4,"right":4,"lead":4,"trail":4} }',
      `{\n  "name": "a", "paper": "a4",\n  "marginsMm": {"left":4,"right":4,"lead":4,"trail":4},\n  ${added} }`,
    ],
  ])('adds the field where there is none, and changes nothing else', async (text, expected) => {
    const run = await calibrate(text, ...ARGS, '100mm,99.6mm');
    expect(run).toMatchObject({ code: 0, text: expected });
    expect(await readPrinter(run.text, 'a')).toMatchObject({ scaleCorrection: { scan: 1, feed: 1.004016 } });
  });

  it.each([
    ['exact', '100mm,10cm', 0],
    ['fit-to-page', '96.85mm,96.85mm', 1],
    ['borderless', '102mm,102mm', 1],
    ['implausible', '96.85mm,100mm', 1],
  ])('changes nothing: %s', async (code, ruler, exit) => {
    const run = await calibrate(SHED_PRINTER, ...ARGS, ruler, '--json');
    expect(run.code).toBe(exit);
    expect(JSON.parse(run.stdout)).toMatchObject({ schemaVersion: 1, code, stored: false, error: null });
    expect(run.text).toBe(SHED_PRINTER);
  });

  it.each([
    ['exact', '100mm,100mm', []],
    ['corrected', '100mm,99.9mm', []],
    ['corrected', '100mm,99.9mm', ['--dry-run']],
    ['fit-to-page', '96.85mm,96.85mm', []],
    ['borderless', '102mm,102mm', []],
    ['implausible', '96.85mm,100mm', []],
  ])('tells programs what its schema says: %s of %s, %j', async (code, ruler, more) => {
    const { stdout } = await calibrate(SHED_PRINTER, ...ARGS, ruler, '--json', ...more);
    const document = JSON.parse(stdout);
    expect(document.code).toBe(code);
    expect(fulfilsSchema(document), JSON.stringify(fulfilsSchema.errors)).toBe(true);
    // One thing broken at a time is refused.
    for (const field of Object.keys(document)) {
      const { [field]: _left, ...rest } = document;
      expect(fulfilsSchema(rest), `without ${field}`).toBe(false);
    }
    expect(fulfilsSchema({ ...document, more: 1 })).toBe(false);
    expect(fulfilsSchema({ ...document, explanation: document.explanation ? null : {} })).toBe(false);
    expect(fulfilsSchema({ ...document, stored: true })).toBe(code === 'corrected');
  });

  it('writes nothing on a dry run', async () => {
    const run = await calibrate(SHED_PRINTER, ...ARGS, '100mm,99.9mm', '--dry-run');
    expect(run).toMatchObject({ code: 0, text: SHED_PRINTER });
  });

  it.each([
    ['bad-ruler', ['--ruler', '0mm,100mm']],
    ['bad-ruler', ['--ruler', '100mm,500mm']],
    ['bad-ruler', []],
    ['length-without-unit', ['--ruler', '100,100']],
    ['bad-offset', ['--ruler', '100mm']],
    ['bad-length', ['--ruler', '100mm,100mm', '--ruler-length', '0mm']],
    ['bad-option', ['--ruler', '100mm,100mm', 'pear.png']],
  ])('refuses with exit 2: %s', async (code, args) => {
    const run = await calibrate(SHED_PRINTER, 'calibrate', '--printer', 'shed.json', ...args);
    expect(run).toMatchObject({ code: 2, stdout: '', text: SHED_PRINTER });
    expect(run.stderr).toContain(`[${code}]`);
  });

  it.each([
    ['missing-printer', ['calibrate', '--ruler', '100mm,100mm']],
    ['no-such-file', ['calibrate', '--printer', 'no.json', '--ruler', '100mm,100mm']],
    ['no-such-file', ['calibrate', '--printer', '.', '--ruler', '100mm,100mm']],
  ])('refuses with exit 2: %s', async (code, args) => {
    const run = await calibrate(SHED_PRINTER, ...args);
    expect(run.code).toBe(2);
    expect(run.stderr).toContain(`[${code}]`);
  });
});
