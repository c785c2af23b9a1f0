import { BlankcheckError } from '../blankcheck-error.ts';
import type { ConditionRecord } from '../catalogue/condition-record.ts';
import { CONDITIONS } from '../catalogue/seed-data.ts';
import { readProfile } from '../icc/read-profile.ts';
import { rememberGamutGrid } from './colour-tables.ts';
import type { PrintingCondition } from './printing-condition.ts';

/** What stands in for the printer when nobody says which it is. */
export const DEFAULT_CONDITION = 'coated-reference';

const loaded = new Map<string, Promise<PrintingCondition>>();

/** Ids of the conditions that ship. */
export function listConditionIds(): readonly string[] {
  return CONDITIONS.map(({ id }) => id);
}

/**
 * A printing condition that ships, by its id. Its profile is loaded at the first call and kept.
 * @throws BlankcheckError `bad-condition` for an id that is none
 * @see seeds/printing-conditions.json
 */
export async function loadCondition(id: string): Promise<PrintingCondition> {
  const record = CONDITIONS.find((candidate) => candidate.id === id);
  if (!record)
    throw new BlankcheckError(
      'bad-condition',
      `Expected a printing condition, received "${id}".\nName ${listConditionIds().join(', ')}, or the ICC profile of your printer (such as my-printer.icc).`,
    );
  const condition = loaded.get(id) ?? load(record);
  loaded.set(id, condition);
  return condition;
}

async function load({ id, name, reference, attribution }: ConditionRecord): Promise<PrintingCondition> {
  const { PROFILE_DATA } = await import('./profile-data.ts');
  const { icc, noise, differences } = PROFILE_DATA[id]!;
  const profile = readProfile(Buffer.from(icc, 'base64'));
  rememberGamutGrid(profile, { noise, differences: readShorts(Buffer.from(differences, 'base64')) });
  return { id, name, reference, attribution, profile };
}

/** Whole numbers of two bytes, the lower one first, whatever the machine has. */
function readShorts(bytes: Buffer): Uint16Array {
  return Uint16Array.from({ length: bytes.length / 2 }, (_, i) => bytes.readUInt16LE(2 * i));
}
