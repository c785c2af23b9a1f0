import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect } from 'vitest';
import { readRunRecord } from '../../cli/again/run-record.ts';
import { RUN_RECORD_NAME } from '../../cli/output/run-record-name.ts';
import { readSettingsFile, SETTINGS_FILE_NAME } from '../../cli/settings/read-settings-file.ts';
import { writeZip } from '../../fixtures/byte-writers/write-zip.ts';
import {
  BlankcheckError,
  findBlank,
  inspectPrintReady,
  openZip,
  preflight,
  readBlankRecord,
  readCondition,
  readLedger,
  readPrinter,
  readPrinterProfile,
  readPrintRecord,
  readSheetJob,
} from '../../src/index.ts';
import { makeArt } from '../cli/art.ts';
import { runMain } from '../cli/run-main.ts';
import { listFiles, makeFolder, putFiles } from '../cli/temp-folder.ts';
import { mutate, mutatePng } from './mutate.ts';

/** One kind of input, and who reads it. Whoever refuses does so by a BlankcheckError, or as it tells. */
export interface FuzzTarget {
  readonly make: () => Promise<Uint8Array> | Uint8Array;
  readonly read: (bytes: Uint8Array) => Promise<unknown> | unknown;
  /** `mutate` unless it says otherwise. */
  readonly change?: (bytes: Uint8Array, seed: number) => Uint8Array;
}

/** So long an artwork may take before the program itself gives it up. */
export const MAX_SECONDS = 20;
const request = { blank: findBlank('tile-ceramic-8in')!, widthMm: 20 };
const art = sharp({ create: { width: 40, height: 30, channels: 4, background: '#3a7d2cc0' } });
const deep = sharp({ create: { width: 20, height: 10, channels: 3, background: '#804020' } });
const text = (bytes: Uint8Array) => Buffer.from(bytes).toString('utf8');
const never = new AbortController().signal;

const SVG = `<svg xmlns="http://www.w3.org/2000/svg" width="20mm" height="15mm" viewBox="0 0 40 30">
  <defs><linearGradient id="g"><stop offset="0" stop-color="#3a7d2c"/></linearGradient></defs>
  <g transform="rotate(3) scale(.9)"><rect width="30" height="20" fill="url(#g)"/><text x="3" y="9">sale</text></g></svg>`;
const JOB = `{ // spring plant sale
  "sheet": "a4", "gutter": "3mm", "pieces": [{ "art": "basil.png", "blank": "30x60mm", "copies": 12, "mayTurn": true }] }`;
const PRINTER = `{ "name": "Shed", "paper": "a4", "ppi": 360, "scaleCorrection": { "scan": 1.01, "feed": 1 }, "driverMirrors": true }`;
const SETTINGS = `{ // of this stall\n "ppi": "320", "blank": "tile-ceramic-8in", "quiet": true, "limit": ["maxPixels=1000000"] }`;
const LEDGER = [1, 2, 3]
  .map(
    (day) =>
      `{"schemaVersion":1,"date":"2026-03-0${day}","blank":"tile-ceramic-8in","result":5,"lot":"spring"}`,
  )
  .join('\n');
const conditions = new URL('../../seeds/conditions/', import.meta.url);
const profile = readFileSync(
  new URL(readdirSync(conditions).find((name) => name.endsWith('.icc'))!, conditions),
);
const ZIP = [
  { name: 'basil.png', content: makeArt() },
  { name: 'low/mint.svg', content: Buffer.from(SVG) },
  { name: 'licence.txt', content: Buffer.from('for the plant sale') },
];

export const TARGETS: Readonly<Record<string, FuzzTarget>> = {
  png: { make: () => art.clone().withDensity(300).png().toBuffer(), read: judge },
  'png, chunk by chunk': {
    make: () => art.clone().withIccProfile('p3').withDensity(300).png({ palette: true }).toBuffer(),
    read: judge,
    change: mutatePng,
  },
  'png, 16 bits': { make: () => deep.clone().toColourspace('rgb16').png().toBuffer(), read: judge },
  jpeg: {
    make: () =>
      art
        .clone()
        .withExif({ IFD0: { Copyright: 'garden' } })
        .jpeg()
        .toBuffer(),
    read: judge,
  },
  webp: { make: () => art.clone().webp().toBuffer(), read: judge },
  tiff: { make: () => art.clone().tiff({ compression: 'deflate' }).toBuffer(), read: judge },
  avif: { make: () => art.clone().avif({ effort: 0 }).toBuffer(), read: judge },
  gif: { make: () => art.clone().gif().toBuffer(), read: judge },
  svg: { make: () => Buffer.from(SVG), read: judge },
  zip: { make: () => writeZip(ZIP), read: unpack },
  'zip, from folder to folder': { make: () => writeZip(ZIP), read: runOver },
  'print-ready file': { make: prepareOne, read: (bytes) => inspectPrintReady(bytes) },
  'blank record': {
    make: () => Buffer.from(JSON.stringify(findBlank('tile-ceramic-8in'))),
    read: (bytes) => readBlankRecord(jsonOf(bytes), 'blank.json'),
  },
  job: { make: () => Buffer.from(JOB), read: (bytes) => readSheetJob(text(bytes), 'job.json') },
  'printer record': {
    make: () => Buffer.from(PRINTER),
    read: (bytes) => readPrinter(text(bytes), 'printer.json'),
  },
  settings: {
    make: () => Buffer.from(SETTINGS),
    read: (bytes) => {
      const cwd = makeFolder({ [SETTINGS_FILE_NAME]: bytes });
      return readSettingsFile(join(cwd, SETTINGS_FILE_NAME), cwd, never);
    },
  },
  ledger: { make: () => Buffer.from(LEDGER), read: (bytes) => readLedger(text(bytes)) },
  'run record': {
    make: makeRunRecord,
    read: (bytes) => readRunRecord(makeFolder({ [RUN_RECORD_NAME]: bytes })),
  },
  condition: { make: () => profile, read: (bytes) => readCondition(bytes, 'condition.icc') },
  'printer profile': { make: () => profile, read: (bytes) => readPrinterProfile(bytes, 'printer.icc') },
};

export const changeOf = ({ change }: FuzzTarget) => change ?? mutate;

async function judge(bytes: Uint8Array): Promise<void> {
  readPrintRecord(bytes);
  const { report } = await preflight({ path: 'art', bytes }, request, {
    write: true,
    anyway: true,
    limits: { maxPixels: 1_000_000, maxSeconds: MAX_SECONDS },
  });
  const broken = report.outcomes.filter(({ status }) => status === 'broken');
  if (broken.length > 0) throw new Error(`broken: ${JSON.stringify(broken)}`);
  if (report.status === 'unreadable') throw new BlankcheckError('cannot-read', report.error!.message);
}

async function unpack(bytes: Uint8Array): Promise<void> {
  const archive = await openZip(bytes);
  for (const entry of archive.entries) {
    const climbs = /(^|[\\/])\.\.([\\/]|$)|^[\\/]|^[a-z]:/i.test(entry.name);
    expect(entry.refusal !== null || !climbs).toBe(true);
    await archive.read(entry).catch((error: unknown) => {
      if (!(error instanceof BlankcheckError)) throw error;
    });
  }
}

/** What is written lies in the output folder and is whole, and nothing of ours failed. */
async function runOver(bytes: Uint8Array): Promise<void> {
  const cwd = makeFolder({ 'in/pack.zip': bytes });
  const run = await runMain(
    ['in', '--blank', '60x60mm', '--width', '2mm', '--out', 'out', '--anyway', '--quiet'],
    { cwd },
  );
  expect([0, 1, 2], run.stderr).toContain(run.code);
  for (const name of listFiles(cwd).filter((file) => file !== 'in/pack.zip')) {
    expect(name).toMatch(/^out\/(?:[^/]+\.60x60mm\.png|\.blankcheck-run\.jsonl)$/);
    if (name.endsWith('.png')) await sharp(join(cwd, name), { failOn: 'warning' }).stats();
  }
  if (run.code === 2) throw new BlankcheckError('no-artwork-in-folder', run.stderr);
}

async function prepareOne(): Promise<Uint8Array> {
  const { printReady } = await preflight({ path: 'art.png', bytes: makeArt() }, request, {
    write: true,
    anyway: true,
  });
  return printReady!.bytes;
}

async function makeRunRecord(): Promise<Uint8Array> {
  const cwd = makeFolder();
  putFiles(cwd, { 'in/basil.png': makeArt(), 'in/mint.png': makeArt([1, 2, 3]) });
  await runMain(['in', '--blank', '60x60mm', '--width', '2mm', '--out', 'out'], { cwd });
  return readFileSync(join(cwd, 'out', RUN_RECORD_NAME));
}

function jsonOf(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(text(bytes));
  } catch {
    return null;
  }
}
