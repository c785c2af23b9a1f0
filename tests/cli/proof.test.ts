import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import { writePng } from '../../fixtures/byte-writers/write-png.ts';
import { type RunReport, readPrintRecord } from '../../src/index.ts';
import { findSchemaFaults } from '../reports/report-schema.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, readText } from './temp-folder.ts';

const ART = makeArt();
const CLEAR = { widthPx: 8, heightPx: 8, colourType: 6, bitDepth: 8 } as const;
const SHARP = ['--blank', '40x40mm', '--width', '2mm'];
const BLURRED = ['--blank', '40x40mm', '--width', '20mm'];
const NAME = 'proofs/pear.40x40mm.proof.png';

async function reportOf(args: readonly string[], cwd: string): Promise<RunReport> {
  const { stdout } = await runMain([...args, '--json'], { cwd });
  const report = JSON.parse(stdout) as RunReport;
  expect(findSchemaFaults(report)).toEqual([]);
  return report;
}

describe('--proof', () => {
  it('prepare writes both files and tells both paths; check writes the proof alone', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const checked = await runMain(['check', 'pear.png', ...SHARP, '--proof', 'proofs'], { cwd });
    expect([checked.code, checked.stdout]).toEqual([0, `${NAME}\n`]);
    expect(checked.stderr).toContain('never to print');
    expect(listFiles(cwd)).toEqual(['pear.png', NAME]);
    const prepared = await runMain(['pear.png', ...SHARP, '--proof', 'proofs', '--force'], { cwd });
    expect([prepared.code, prepared.stdout]).toEqual([0, `print-ready/pear.40x40mm.png\n${NAME}\n`]);
  });

  it('is told in the report, with or without marks, whatever the verdict', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const plain = await reportOf(['check', 'pear.png', ...SHARP, '--proof', 'proofs'], cwd);
    expect(plain.results[0]).toMatchObject({
      proof: { path: NAME, ppi: 300, marked: false },
      proofError: null,
    });
    const stopped = ['pear.png', ...BLURRED, '--proof', 'proofs', '--proof-mark', '--force'];
    const { results } = await reportOf(stopped, cwd);
    expect(results[0]).toMatchObject({ status: 'stop', output: null, proof: { path: NAME, marked: true } });
    expect(readPrintRecord(readFileSync(join(cwd, NAME)))?.kind).toBe('proof');
  });

  it('a dry run writes none, and says so', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const { stderr, stdout } = await runMain(['pear.png', ...SHARP, '--proof', 'proofs', '--dry-run'], {
      cwd,
    });
    expect(stdout).toBe('');
    expect(stderr).toMatch(/Proof\n {2}Not written: this run only looked\./);
    expect(existsSync(join(cwd, 'proofs'))).toBe(false);
  });

  it('replaces nothing without --force: the print-ready file is written all the same, exit 1', async () => {
    const cwd = makeFolder({ 'pear.png': ART, [NAME]: 'old', file: '' });
    const { results } = await reportOf(['pear.png', ...SHARP, '--proof', 'proofs'], cwd);
    expect(results[0]).toMatchObject({ error: null, proof: null, proofError: { code: 'file-exists' } });
    expect(results[0]!.proofError!.message).toContain('--proof');
    expect(results[0]!.output).not.toBeNull();
    expect(readText(cwd, NAME)).toBe('old');
    const blocked = await runMain(['check', 'pear.png', ...SHARP, '--proof', 'file'], { cwd });
    expect(blocked.code).toBe(1);
    expect(blocked.stderr).toContain('cannot-write');
    expect(blocked.stderr).toContain('--proof');
  });

  it('artworks of one name have proofs of two, and an artwork is never replaced', async () => {
    const cwd = makeFolder({ 'a/pear.png': ART, 'b/pear.png': makeArt([200, 30, 30]), [NAME]: ART });
    const { results } = await reportOf(
      ['check', 'a/pear.png', 'b/pear.png', ...SHARP, '--proof', 'proofs'],
      cwd,
    );
    const paths = results.map(({ proof }) => proof!.path);
    expect(new Set(paths).size).toBe(2);
    const named = await reportOf(
      ['check', 'a/pear.png', NAME, ...SHARP, '--proof', 'proofs', '--force'],
      cwd,
    );
    expect(named.results.map(({ proofError }) => proofError?.code ?? null)).toEqual(['cannot-write', null]);
  });

  it('a proof is passed over in folders and refused as artwork', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    await runMain(['check', 'pear.png', ...SHARP, '--proof', '.'], { cwd });
    const { summary } = await reportOf(['check', '.', ...SHARP], cwd);
    expect(summary).toMatchObject({ artworks: 1, passedOver: 1 });
    const { results } = await reportOf(['check', 'pear.40x40mm.proof.png', ...SHARP], cwd);
    const prepared = results[0]!.outcomes.find(({ check }) => check === 'already-prepared')!;
    expect(prepared).toMatchObject({ findings: [{ code: 'prepared-before', facts: { kind: 'proof' } }] });
    expect(results[0]!.status).toBe('stop');
  });

  it('there is none of what cannot be read or seen', async () => {
    const clear = makeArt();
    const cwd = makeFolder({ 'torn.png': clear.slice(0, -20) });
    const { results } = await reportOf(['check', 'torn.png', ...SHARP, '--proof', 'proofs'], cwd);
    expect(results[0]).toMatchObject({ status: 'unreadable', proof: null, proofError: null });
    expect(existsSync(join(cwd, 'proofs'))).toBe(false);
  });

  it.each([
    ['nothing visible', writePng({ ...CLEAR, samples: new Array<number>(64 * 4).fill(0) }), [], 'stop'],
    ['more pixels than the limit', ART, ['--limit', 'maxPixels=100'], 'unreadable'],
  ])('there is none of %s, and no file', async (_, art, more, status) => {
    const cwd = makeFolder({ 'pear.png': art });
    const { results } = await reportOf(['pear.png', ...SHARP, '--proof', 'proofs', ...more], cwd);
    expect(results[0]).toMatchObject({ status, output: null, proof: null, proofError: null });
    expect(listFiles(cwd)).toEqual(['pear.png']);
  });

  it('of a round body shows it from four sides, and says so', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const words = ['check', 'pear.png', '--blank', 'mug-11oz', '--wrap', 'around', '--proof', 'proofs'];
    const { results } = await reportOf([...words, '--proof-mark'], cwd);
    expect(results[0]).toMatchObject({ proofError: null, proof: { marked: true } });
    const bytes = readFileSync(join(cwd, results[0]!.proof!.path));
    expect(readPrintRecord(bytes)?.kind).toBe('proof');
    const { width = 0, height = 0 } = PNG.sync.read(bytes);
    const { widthMm, heightMm } = results[0]!.blank;
    const mm = (px: number) => (px / results[0]!.proof!.ppi) * 25.4;
    // The paper laid flat, and below a row of four bodies the caption: the row is at least a third as high as the paper.
    expect(mm(width)).toBeGreaterThan(widthMm);
    expect(mm(height)).toBeGreaterThan(1.3 * heightMm);
  });

  it('--proof-mark without a proof is a slip', async () => {
    const cwd = makeFolder({ 'pear.png': ART });
    const { code, stderr } = await runMain(['pear.png', ...SHARP, '--proof-mark'], { cwd });
    expect(code).toBe(2);
    expect(stderr).toContain('--proof-mark');
  });
});
