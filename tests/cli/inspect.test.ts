import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { VERSION } from '../../src/index.ts';
import { expectGolden } from '../golden.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { makeFolder } from './temp-folder.ts';

const schema = JSON.parse(
  readFileSync(new URL('../../seeds/schema/inspections.schema.json', import.meta.url), 'utf8'),
);
const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile(schema);
const ART = makeArt();

/** A folder with art, its print-ready file, a copy of that with the density changed, and one whose end is missing. */
async function makeShed(): Promise<string> {
  const cwd = makeFolder({ 'basil.png': ART, 'note.txt': 'sow in April' });
  const args = ['basil.png', '--blank', '30x40mm', '--width', '2mm', '--ppi', '72', '--out', 'ready'];
  expect((await runMain(args, { cwd })).code).toBe(0);
  return cwd;
}
const FILE = 'ready/basil.30x40mm.png';

describe('blankcheck inspect', () => {
  it('tells programs what its schema says, of several files', async () => {
    const cwd = await makeShed();
    const { code, stdout } = await runMain(['inspect', FILE, 'basil.png', 'note.txt', '--json'], { cwd });
    expect(code).toBe(1);
    const document = JSON.parse(stdout);
    expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
    expect(document.results.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'unchanged',
      'not-print-ready',
      'unreadable',
    ]);
  });

  it('is 0 for an unchanged file, from a folder and from standard input too', async () => {
    const cwd = await makeShed();
    const stdin = readFileSync(`${cwd}/${FILE}`);
    for (const word of [FILE, 'ready', '-']) {
      const { code, stdout, stderr } = await runMain(['inspect', word, '--json'], { cwd, stdin });
      expect([code, stderr]).toEqual([0, '']);
      expect(JSON.parse(stdout).results).toHaveLength(1);
    }
  });

  it('reads a whole page, corrected for a printer, as it was written', async () => {
    const printer = {
      name: 'Shed',
      paper: 'a5',
      scaleCorrection: { scan: 1.002, feed: 0.996 },
    };
    const cwd = makeFolder({ 'basil.png': ART, 'shed.json': JSON.stringify(printer) });
    const page = ['--sheet', 'a5', '--format', 'png', '--printer', 'shed.json', '--out', 'ready'];
    const made = await runMain(
      ['basil.png', '--blank', '30x40mm', '--width', '2mm', '--ppi', '72', ...page],
      {
        cwd,
      },
    );
    expect(made.code, made.stderr).toBe(0);
    const { code, stdout } = await runMain(['inspect', made.stdout.trim(), '--json'], { cwd });
    expect([code, JSON.parse(stdout).results[0].changes]).toEqual([0, []]);
    expect(JSON.parse(stdout).results[0].record.densityPpi).toBeDefined();
  });

  describe('of a PDF', () => {
    async function makePdf() {
      const cwd = makeFolder({ 'basil.png': ART });
      const page = ['--sheet', 'a5', '--ppi', '72', '--out', 'ready', '--surface', 'first'];
      const made = await runMain(['basil.png', '--blank', '30x40mm', '--width', '2mm', ...page], { cwd });
      expect(made.code, made.stderr).toBe(0);
      const file = made.stdout.trim();
      expect(file).toMatch(/\.pdf$/);
      return { cwd, file, bytes: readFileSync(`${cwd}/${file}`) };
    }
    const look = async (bytes: Uint8Array) => {
      const { code, stdout } = await runMain(['inspect', '-', '--json'], { cwd: makeFolder(), stdin: bytes });
      const document = JSON.parse(stdout);
      expect(validate(document), JSON.stringify(validate.errors)).toBe(true);
      const [{ verdict, changes, trueSizeMm, pages, record, file }] = document.results;
      return { code, verdict, changes, trueSizeMm, pages, record, format: file.format };
    };

    it('says its size, its blank, its art, that it is mirrored, and that it is as it was written', async () => {
      const { bytes } = await makePdf();
      const { record, ...told } = await look(bytes);
      // ISO 216, to a millionth.
      const trueSizeMm = { width: 148, height: 210 };
      expect(told).toEqual({
        code: 0,
        verdict: 'unchanged',
        changes: [],
        trueSizeMm,
        pages: 1,
        format: 'pdf',
      });
      expect(record).toMatchObject({ blankId: '30x40mm', mirrored: true });
      expect(record.sourceSha256).toBe(createHash('sha256').update(ART).digest('hex'));
    });

    it('finds every change of a byte before the end, what was added behind it, and what is missing', async () => {
      const { bytes } = await makePdf();
      const xref = bytes.lastIndexOf('xref\n0 ');
      for (let i = 0; i < 40; i += 1) {
        const at = 9 + Math.floor(((xref - 10) * i) / 39);
        const flipped = Buffer.from(bytes);
        flipped[at]! ^= 1;
        const { verdict } = await look(flipped);
        expect([at, ['changed', 'record-damaged', 'not-print-ready'].includes(verdict)]).toEqual([at, true]);
      }
      const longer = Buffer.concat([bytes, bytes.subarray(xref)]);
      const shorter = bytes.subarray(0, bytes.length - 1);
      for (const other of [longer, shorter]) {
        const { code, verdict, changes } = await look(other);
        expect([code, verdict, changes]).toEqual([1, 'changed', [{ code: 'document' }]]);
      }
    });

    it('takes a PDF of others, and a stub of one, for what they are', async () => {
      for (const text of [
        '%PDF-1.4\n1 0 obj\n<<>>\nendobj\n%%EOF\n',
        '%PDF-',
        '%PDF-1.7\nstartxref\n9999\n%%EOF\n',
      ]) {
        const { code, verdict, trueSizeMm, pages } = await look(Buffer.from(text));
        expect([code, verdict, trueSizeMm, pages]).toEqual([1, 'not-print-ready', null, 0]);
      }
    });

    it('is told to people with its size', async () => {
      const { cwd, file } = await makePdf();
      const { stdout } = await runMain(['inspect', file], { cwd });
      expect(stdout).toContain('PDF, 1 page of 148 x 210 mm');
    });
  });

  it('tells people the same', async () => {
    const cwd = await makeShed();
    const { stdout } = await runMain(['inspect', FILE, 'basil.png', 'note.txt'], { cwd });
    expectGolden('inspect.txt', stdout.replace(VERSION, '<version>'));
  });

  it.each([
    [[], 'missing-artwork'],
    [['nothing.png'], 'no-such-file'],
    [['.'], 'no-artwork-in-folder'],
    [['basil.png', '--blank', '30x40mm'], 'bad-option'],
  ])('%j is %s', async (words, code) => {
    const run = await runMain(['inspect', ...words], { cwd: makeFolder({ 'basil.png': ART }) });
    expect(run).toMatchObject({ code: 2, stdout: '' });
    expect(run.stderr).toContain(`[${code}]`);
  });
});
