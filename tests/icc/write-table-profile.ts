import { descriptionTag, translatedTag, xyzTag } from '../../fixtures/byte-writers/icc-tags.ts';
import { writeIcc } from '../../fixtures/byte-writers/write-icc.ts';

/** A profile made of one table in either direction. */
export interface TableProfile {
  readonly name: string;
  readonly majorVersion: 2 | 4;
  readonly space: string;
  readonly connection: 'Lab ' | 'XYZ ';
  readonly tables: Readonly<Record<'A2B' | 'B2A', Uint8Array>>;
  /** Half a count of the coarsest node values: how far rounding takes them off their plane. */
  readonly offPlane: number;
}

const D50 = [0.9642, 1, 0.8249];

/** The bytes of such a profile. */
export function writeTableProfile({
  name,
  majorVersion,
  space,
  connection,
  tables,
}: TableProfile): Uint8Array {
  return writeIcc({
    majorVersion,
    profileClass: 'prtr',
    space,
    connection,
    tags: {
      desc: majorVersion === 2 ? descriptionTag(name) : translatedTag({ en: name }),
      wtpt: xyzTag(D50),
      ...forEveryIntent(tables),
    },
  });
}

/** The one table of a direction under all three names: Argyll wants the intent that it is asked for. */
function forEveryIntent(tables: Readonly<Record<'A2B' | 'B2A', Uint8Array>>): Record<string, Uint8Array> {
  const names = ['A2B0', 'A2B1', 'A2B2', 'B2A0', 'B2A1', 'B2A2'];
  return Object.fromEntries(names.map((name) => [name, name.startsWith('A2B') ? tables.A2B : tables.B2A]));
}
