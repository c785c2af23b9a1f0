import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { gamutTableOf, lightnessTableOf } from '../../src/conditions/colour-tables.ts';
import { listConditionIds, loadCondition } from '../../src/conditions/load-condition.ts';
import { makeGamutTable } from '../../src/icc/gamut-table.ts';
import { SRGB_PROFILE } from '../../src/icc/srgb-profile.ts';
import { readSeed } from '../catalogue/seed-files.ts';
import { seededNumbers } from '../pictures.ts';

describe('loadCondition', () => {
  it('the reference says that it is one, and whose measurements it rests on', async () => {
    const { id, name, reference, attribution, profile } = await loadCondition('coated-reference');
    expect({ id, reference }).toEqual({ id: 'coated-reference', reference: true });
    expect(name).toBe('Generic coated white reference (not your printer)');
    expect(attribution).toContain('TR 006');
    expect([profile.class, profile.space]).toEqual(['output', 'cmyk']);
  });

  it('knows every condition of the seeds, and loads each once', async () => {
    const { conditions } = readSeed('printing-conditions.json') as { conditions: { id: string }[] };
    expect(listConditionIds()).toEqual(conditions.map(({ id }) => id));
    for (const id of listConditionIds()) expect(await loadCondition(id)).toBe(await loadCondition(id));
  });

  it('refuses an id that is none', async () => {
    await expect(loadCondition('my-printer')).rejects.toMatchObject({ code: 'bad-condition', kind: 'usage' });
  });
});

describe('tables', () => {
  it('are made once for a condition and a source', async () => {
    const { profile } = await loadCondition('coated-reference');
    expect(gamutTableOf(profile, SRGB_PROFILE)).toBe(gamutTableOf(profile, SRGB_PROFILE));
    expect(lightnessTableOf(profile, SRGB_PROFILE)).toBe(lightnessTableOf(profile, SRGB_PROFILE));
    expect(gamutTableOf(profile, { ...SRGB_PROFILE })).not.toBe(gamutTableOf(profile, SRGB_PROFILE));
    expect(gamutTableOf({ ...profile }, SRGB_PROFILE)).not.toBe(gamutTableOf(profile, SRGB_PROFILE));
  });
});

describe('the profiles that ship', () => {
  it('come with the very table that would be measured', async () => {
    const { profile } = await loadCondition('coated-reference');
    const next = seededNumbers(8);
    const codes = Uint8Array.from({ length: 30_000 }, () => Math.floor(next() * 256));
    const [kept, fresh] = [new Uint16Array(10_000), new Uint16Array(10_000)];
    const table = gamutTableOf(profile, SRGB_PROFILE);
    const measured = makeGamutTable(profile, SRGB_PROFILE);
    table.measure8(codes, kept, 10_000);
    measured.measure8(codes, fresh, 10_000);
    expect(kept).toEqual(fresh);
    expect(table.noise).toBe(measured.noise);
  });

  it('are loaded by one dynamic import, so that listing blanks does not read them', () => {
    const root = join(dirname(fileURLToPath(import.meta.url)), '../..');
    const text = readFileSync(join(root, 'src/conditions/load-condition.ts'), 'utf8');
    expect(text).toContain("await import('./profile-data.ts')");
    expect(text).not.toMatch(/^import .*profile-data/m);
  });
});
