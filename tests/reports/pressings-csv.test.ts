import { spawnSync } from 'node:child_process';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { renderPressingsCsv } from '../../src/reports/pressings-csv.ts';
import { showHidden } from '../../src/reports/visible-text.ts';
import { makePressing } from '../ledger/pressings.ts';
import { findSteering } from './steering.ts';

const csv = (...notes: string[]) =>
  renderPressingsCsv(notes.map((note, index) => ({ line: index + 1, pressing: makePressing({ note }) })));

/** A reader of our own by the grammar of RFC 4180, section 2: quoted fields, doubled quotes, CRLF. */
function parse(text: string): string[][] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain, end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/g)) {
    rows.at(-1)!.push(quoted === undefined ? plain! : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows.slice(0, -1);
}

describe('the table for spreadsheets', () => {
  it('has a row of names, a row per record, and the numbers', () => {
    const [head, row] = parse(csv('fresh paper'));
    const cells = Object.fromEntries(head!.map((name, index) => [name, row![index]]));
    expect(cells).toMatchObject({
      line: '1',
      result: '4',
      defects: 'faded specks',
      blank: 'tile-ceramic-8in',
      temperatureC: '204.4',
      temperatureF: '400',
      platenTemperatureC: '196',
      platenTemperatureF: '384.8',
      timeS: '300',
      pressure: 'firm',
      photoSha256: '',
      note: 'fresh paper',
    });
  });

  it('gives back every text with its lines, what is hidden visible, and none that a spreadsheet would run', () => {
    fc.assert(
      fc.property(fc.string({ minLength: 1, unit: 'binary' }), (note) => {
        const rows = parse(csv(note));
        expect(rows).toHaveLength(2);
        const cell = rows[1]!.at(-1)!;
        const shown = note.split('\n').map(showHidden).join('\n');
        expect([shown, `'${shown}`]).toContain(cell);
        expect(findSteering(cell)).toEqual([]);
        expect(cell).not.toMatch(/^\s*[=+\-@]/);
      }),
    );
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\n=1', ' =1', '=HYPERLINK("x")', '＝1+1'])(
    '%j is led by an apostrophe',
    (note) => expect(parse(csv(note))[1]!.at(-1)).toBe(`'${note}`),
  );

  it.each([
    ['\t=1', '\\t=1'],
    ['\r=1', '\\r=1'],
    ['\u001b[2J', '\\u001b[2J'],
    ['pear\u202egnp', 'pear\\u202egnp'],
  ])('%j is seen as %s', (note, cell) => expect(parse(csv(note))[1]!.at(-1)).toBe(cell));

  it.each(['2 = 1 + 1', 'a,b', 'said "so"', 'two\nlines', "it's"])('%j stays as it is', (note) =>
    expect(parse(csv(note))[1]!.at(-1)).toBe(note),
  );

  it('is read the same by another program', (context) => {
    const notes = ['a,b', 'said "so"', 'two\nlines', 'grün', '=1'];
    const script =
      'import csv,io,json,sys;print(json.dumps([r[-1] for r in csv.reader(io.StringIO(sys.stdin.buffer.read().decode(),newline=""))]))';
    const { status, stdout, error } = spawnSync('python3', ['-c', script], {
      input: csv(...notes),
      encoding: 'utf8',
    });
    if (error) return context.skip('python3 is not installed');
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual(['note', ...notes.slice(0, -1), "'=1"]);
  });
});
