import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { row, runNode, timeInTurn } from './measure.mjs';

const RECORDS = 100_000;
const bin = fileURLToPath(new URL('../../dist/cli/bin.js', import.meta.url));
const ART = ['pear', 'quince', 'sage', 'thyme', 'foxglove'];
const BLANKS = ['tile-ceramic-8in', 'mug-11oz', 'tag-pet-round'];

/** A ledger of a stall that has pressed for long: one line a piece, all different. */
function makeLedger() {
  return Array.from({ length: RECORDS }, (_, i) =>
    JSON.stringify({
      schemaVersion: 1,
      at: new Date(Date.UTC(2020, 0, 1) + i * 1_000_000).toISOString(),
      blank: { id: BLANKS[i % BLANKS.length], name: 'a blank of the bench', lot: `lot ${i % 97}` },
      art: { file: `${ART[i % ART.length]}-${i % 1000}.png`, sha256: i.toString(16).padStart(64, '0') },
      recipe: { temperature: { value: 190 + (i % 20), unit: 'C' }, timeS: 50 + (i % 40), pressure: 'medium' },
      result: 1 + (i % 5),
      defects: [],
      note: `sale, piece ${i}`,
    }),
  ).join('\n');
}

/** `history` over a long ledger as a process of its own: its seconds, and against a script that parses every line. */
export async function historyRows(rounds) {
  const folder = mkdtempSync(join(tmpdir(), 'blankcheck-history-'));
  try {
    const ledger = join(folder, 'ledger.jsonl');
    writeFileSync(ledger, `${makeLedger()}\n`);
    const ms = await timeInTurn(
      {
        history: () => runNode([bin, 'history', 'quince', 'lot 41', '--ledger', ledger]),
        parse: () => {
          for (const line of readFileSync(ledger, 'utf8').trimEnd().split('\n')) JSON.parse(line);
        },
      },
      rounds,
    );
    return [
      row('100,000 records: seconds of history, from a cold start', ms.history / 1000, 1),
      row('100,000 records: history / JSON.parse of every line', ms.history / ms.parse),
    ];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
