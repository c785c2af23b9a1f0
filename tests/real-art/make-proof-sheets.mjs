/**
 * Contact sheets for the eye: real art, its proof and its marks side by side, with what the checks of colours say of it.
 *
 *   node tests/real-art/make-proof-sheets.mjs <blank> <folder for the sheets> <art…>
 *
 * Art is read by its path and never copied. Needs the build, and ImageMagick.
 */
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import sharp from 'sharp';
import { findBlank, preflight } from '../../dist/src/index.js';

const ROWS = 6;
const CELL_PX = 330;
/** Enough to see, and a sixth of the pixels. */
const PPI = 120;

const [blankId = '', sheetsFolder = '', ...paths] = process.argv.slice(2);
const blank = findBlank(blankId);
if (blank === undefined || paths.length === 0) throw new Error('Expected a blank, a folder and art.');
mkdirSync(sheetsFolder, { recursive: true });
const scratch = mkdtempSync(join(tmpdir(), 'proof-sheets-'));

/** What a check said, short. @param {import('../../src/index.ts').Outcome} outcome */
function tell(outcome) {
  if (outcome.status !== 'found') {
    const share = outcome.status === 'passed' ? outcome.facts?.sharePercent : undefined;
    return `${outcome.check}: ${outcome.status}${typeof share === 'number' ? ` (${share.toFixed(2)} %)` : ''}`;
  }
  return outcome.findings
    .map(({ code, facts }) => {
      const { sharePercent, largestMm2, kinds, changes } = facts;
      const told = Array.isArray(changes)
        ? changes
            .slice(0, 2)
            .map((change) => `${change.colour} -> ${change.becomes} dE ${Number(change.deltaE).toFixed(1)}`)
        : [];
      const parts = [
        `${code} ${Number(sharePercent).toFixed(1)} %`,
        `largest ${Number(largestMm2).toFixed(0)} mm2`,
        kinds,
        ...told,
      ];
      return parts.filter((part) => part !== undefined).join(', ');
    })
    .join(' | ');
}

/** One row of a sheet. @param {string} path @param {number} index */
async function makeRow(path, index) {
  const bytes = readFileSync(path);
  const request = { blank, ppi: PPI };
  const files = [path];
  let outcomes;
  for (const mark of [false, true]) {
    const { proof, report } = await preflight({ path, bytes }, request, { write: false, proof: { mark } });
    outcomes = report.outcomes;
    if (proof === null) return null;
    const file = join(scratch, `${index}-${mark}.png`);
    writeFileSync(file, proof.bytes);
    files.push(file);
  }
  const words = outcomes.filter(({ check }) => ['gamut', 'dark-coverage'].includes(check)).map(tell);
  const row = join(scratch, `row-${index}.png`);
  const cells = files.flatMap((file) => [
    '(',
    `${file}[0]`,
    '-background',
    '#e8e8e8',
    '-flatten',
    '-thumbnail',
    `${CELL_PX}x${CELL_PX}`,
    '-gravity',
    'center',
    '-extent',
    `${CELL_PX}x${CELL_PX}`,
    ')',
  ]);
  const label = [`${index + 1}. ${basename(path)}`, ...words];
  const lines = label.map(
    (line, at) =>
      `<text x="4" y="${16 + 18 * at}">${line.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</text>`,
  );
  const strip = join(scratch, `label-${index}.png`);
  await sharp(
    Buffer.from(
      `<svg xmlns="http://www.w3.org/2000/svg" width="${3 * CELL_PX}" height="60" font-family="DejaVu Sans" font-size="11"><rect width="100%" height="100%" fill="#fff"/>${lines.join('')}</svg>`,
    ),
  ).toFile(strip);
  execFileSync('convert', [...cells, '+append', strip, '-append', row]);
  console.log(label.join('\n'));
  return row;
}

try {
  const rows = [];
  for (const [index, path] of paths.entries()) {
    const row = await makeRow(path, index);
    if (row !== null) rows.push(row);
  }
  for (let first = 0; first < rows.length; first += ROWS) {
    const sheet = join(sheetsFolder, `${blankId}-${String(first / ROWS + 1).padStart(2, '0')}.png`);
    execFileSync('convert', [...rows.slice(first, first + ROWS), '-append', sheet]);
  }
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
