import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { BlankcheckError } from '../../src/blankcheck-error.ts';
import { listBlanks } from '../../src/catalogue/catalogue.ts';
import { readBlankRecord } from '../../src/catalogue/read-blank-record.ts';
import { BAD_RECORDS, cup, marker } from './bad-blank-records.ts';

async function messageOf(json: unknown): Promise<string> {
  const error = await readBlankRecord(json, 'markers.json').then(
    () => null,
    (reason: unknown) => reason,
  );
  if (!(error instanceof BlankcheckError)) throw new Error('read without complaint', { cause: error });
  expect(error.code).toBe('bad-blank-record');
  return error.message;
}

describe('readBlankRecord', () => {
  it('gives back what it read, the family left out or not', async () => {
    expect(await readBlankRecord(marker, 'markers.json')).toEqual(marker);
    expect(await readBlankRecord(cup, 'cup.json')).toEqual(cup);
    const full = {
      ...marker,
      family: 'stone-slate',
      recipe: 'slate',
      holes: [],
      bleedMm: 0,
      safeMm: 2.5,
      ppi: 360,
    };
    expect(await readBlankRecord(full, 'markers.json')).toEqual(full);
  });

  it('reads every record of the catalogue from its JSON', async () => {
    for (const blank of listBlanks()) {
      expect(await readBlankRecord(JSON.parse(JSON.stringify(blank)), blank.id)).toEqual(blank);
    }
  });

  it('lets the file name its schema, and leaves that out of the record', async () => {
    expect(await readBlankRecord({ $schema: './blank.schema.json', ...marker }, 'markers.json')).toEqual(
      marker,
    );
  });

  it.each(BAD_RECORDS)(
    'refuses %s and says where, what was expected and what was found',
    async (_, json, parts) => {
      const message = await messageOf(json === undefined ? json : JSON.parse(toJson(json)));
      for (const part of parts) expect(message).toContain(part);
    },
  );

  it('tells all faults of one record, five at most', async () => {
    const faults = await messageOf({ ...marker, bleedMm: -1, safeMm: 'x', sides: 3 });
    for (const field of ['bleedMm', 'safeMm', 'sides']) expect(faults).toContain(`${field}: expected`);
    const many = await messageOf({
      ...marker,
      ...Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`x${i}`, i])),
    });
    expect(many.match(/expected/g)?.length).toBe(5);
    expect(many).toContain('35 more');
  });

  it('reads or refuses any JSON, and never changes it', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.jsonValue(),
        fc.constantFrom('id', 'outline', 'holes', 'wrap', 'surface'),
        async (value, key) => {
          for (const json of [value, { ...marker, [key]: value }]) {
            const before = JSON.stringify(json);
            await readBlankRecord(json, 'any.json').catch((error: unknown) => {
              expect(error).toBeInstanceOf(BlankcheckError);
            });
            expect(JSON.stringify(json)).toBe(before);
          }
        },
      ),
      { seed: 7, numRuns: 200 },
    );
  });
});

/** JSON as a file may hold it: a number too large for a double stands for infinity. */
function toJson(json: unknown): string {
  return JSON.stringify(json, (_, value) => (value === Number.POSITIVE_INFINITY ? '1e999' : value)).replace(
    '"1e999"',
    '1e999',
  );
}
