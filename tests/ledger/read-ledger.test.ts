import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isPressing } from '../../src/ledger/is-pressing.ts';
import { type Pressing, writePressing } from '../../src/ledger/pressing.ts';
import { writePressingSchema } from '../../src/ledger/pressing-schema.ts';
import { findPressingFaults, readLedger } from '../../src/ledger/read-ledger.ts';
import { DEFECTS, type Defect, PRESSURES } from '../../src/ledger/vocabulary.ts';
import { makePressing } from './pressings.ts';

const schemaText = readFileSync(new URL('../../seeds/schema/pressing.schema.json', import.meta.url), 'utf8');
const validate = new Ajv2020({ strict: true, allErrors: true }).compile(JSON.parse(schemaText));

const text = fc.string({ minLength: 1, maxLength: 40, unit: 'binary' });
const anyPressing: fc.Arbitrary<Pressing> = fc
  .record({
    note: text,
    paper: text,
    file: text,
    result: fc.integer({ min: 1, max: 5 }),
    defects: fc.subarray(Object.keys(DEFECTS) as Defect[]),
    pressure: fc.constantFrom(...PRESSURES),
    timeS: fc.double({ min: 1, max: 86_400, noNaN: true }),
  })
  .map(({ note, paper, file, result, defects, pressure, timeS }) =>
    makePressing({
      note,
      paper,
      art: { file, sha256: '0'.repeat(64) },
      result,
      defects,
      recipe: { pressure, timeS },
    }),
  );

describe('a ledger', () => {
  it('gives back what was written, one line each, whatever the words hold', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(anyPressing, { maxLength: 8 }), async (pressings) => {
        const lines = pressings.map(writePressing);
        expect(lines.every((line) => !/[\n\r]/.test(line))).toBe(true);
        const { entries, faults } = await readLedger(lines.map((line) => `${line}\n`).join(''));
        expect(faults).toEqual([]);
        expect(entries.map(({ pressing }) => pressing)).toEqual(pressings);
        expect(entries.map(({ line }) => line)).toEqual(pressings.map((_, index) => index + 1));
      }),
    );
  });

  it('reports bad lines by number and shows the rest, with either line end and a byte order mark', async () => {
    const good = writePressing(makePressing());
    const { entries, faults } = await readLedger(
      `\ufeff${good}\r\n\r\nnot json\n[1]\n${good.replace('"result":4', '"result":9')}\n${good}\n{"torn`,
    );
    expect(entries.map(({ line }) => line)).toEqual([1, 6]);
    expect(faults.map(({ line }) => line)).toEqual([3, 4, 5, 7]);
    expect(faults[2]?.message).toContain('result');
  });

  it('never throws, and tells every line that is not empty', async () => {
    await fc.assert(
      fc.asyncProperty(fc.string({ unit: 'binary' }), async (junk) => {
        const { entries, faults } = await readLedger(junk);
        const told = junk
          .replace(/^\ufeff/, '')
          .split('\n')
          .filter((line) => line.trim() !== '').length;
        expect(entries.length + faults.length).toBe(told);
      }),
    );
  });

  it('keeps fields of later versions', async () => {
    const { entries } = await readLedger(JSON.stringify({ ...makePressing(), roomHumidity: 45 }));
    expect(entries[0]?.pressing).toMatchObject({ roomHumidity: 45 });
  });
});

/** The way to every field, and to one that no version knows. */
function* pathsOf(value: object, way: readonly string[] = []): Generator<readonly string[]> {
  yield [...way, 'unheardOf'];
  for (const [name, inner] of Object.entries(value)) {
    yield [...way, name];
    if (typeof inner === 'object' && inner !== null && !Array.isArray(inner))
      yield* pathsOf(inner, [...way, name]);
  }
}

describe('the schema of a line', () => {
  it('stands in seeds/schema as the code makes it', () => expect(schemaText).toBe(writePressingSchema()));

  // Second implementation: ajv 8 reads the written JSON Schema (draft 2020-12), zod the schema itself.
  it.each([
    [{}, true],
    [{ result: 0 }, false],
    [{ result: 6 }, false],
    [{ result: 4.5 }, false],
    [{ at: 'yesterday' }, false],
    [{ at: '2026-03-14' }, true],
    [{ defects: ['ugly'] }, false],
    [{ recipe: {} }, true],
    [{ recipe: { temperature: { value: 400 } } }, false],
    [{ recipe: { temperature: { value: 400, unit: 'K' } } }, false],
    [{ recipe: { timeS: 0 } }, false],
    [{ recipe: { pressure: 'hard' } }, false],
    [{ art: { file: 'a.png', sha256: 'short' } }, false],
    [{ photo: { file: 'a.jpg', sha256: null } }, true],
    [{ note: '' }, false],
    [{ schemaVersion: 2 }, false],
  ])('%j: %s, by both readers', async (changed, good) => {
    const pressing = { ...makePressing(), ...changed } as Pressing;
    expect(validate(pressing)).toBe(good);
    expect((await findPressingFaults(pressing)) === null).toBe(good);
    expect(isPressing(pressing)).toBe(good);
  });

  it('has the verdict of the fast reader, whatever stands in any one field', async () => {
    const paths = [...pathsOf(makePressing())];
    const values = fc.oneof(
      fc.jsonValue(),
      fc.constantFrom(
        undefined,
        null,
        0,
        1,
        5,
        5.5,
        1001,
        86_401,
        'C',
        'firm',
        'faded',
        '2026-03-14',
        'x'.repeat(2001),
      ),
      fc.stringMatching(/^[0-9a-f]{63,65}$/),
    );
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths), values, async (path, value) => {
        const changed = structuredClone(makePressing()) as unknown as Record<string, unknown>;
        const holder = path.slice(0, -1).reduce((at, name) => at[name] as typeof at, changed);
        // Left out, as JSON has no undefined.
        if (value === undefined) delete holder[path.at(-1)!];
        else holder[path.at(-1)!] = value;
        expect(isPressing(changed)).toBe((await findPressingFaults(changed)) === null);
        expect(isPressing(changed)).toBe(validate(changed));
      }),
      { numRuns: 2000 },
    );
  });
});
