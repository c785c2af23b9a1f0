import type { Lut } from './lut.ts';
import type { ColourModel, IccProfile, TableIntent } from './profile.ts';
import { type ProfileBytes, readSignature, requireBytes } from './profile-bytes.ts';
import { profileError } from './profile-error.ts';
import type { ProfileHeader } from './read-header.ts';
import { readLut } from './read-lut.ts';
import { readLutAB } from './read-lut-ab.ts';
import { readSimpleModel } from './read-simple-model.ts';
import type { TagTable } from './read-tag-table.ts';

type Space = Pick<ProfileHeader, 'space' | 'channels' | 'connection'>;
type Models = Readonly<Record<TableIntent, ColourModel>>;

/** Number that each intent has in the names of the table tags. @see ICC.1:2022, 9.2.1 to 9.2.8 */
const TABLE_NUMBER: Readonly<Record<TableIntent, number>> = { perceptual: 0, relative: 1, saturation: 2 };

/**
 * The models of both directions. Tables go before matrix and curves; an intent without a table of its own takes the
 * perceptual one, then any. @throws profile-malformed, profile-unsupported, profile-missing-tag
 * @see ICC.1:2022, clause 8
 */
export function readDirections(
  space: Space,
  tags: TagTable,
): Pick<IccProfile, 'toConnection' | 'fromConnection'> {
  const simple = readSimpleModel(space, tags);
  const everyIntent = simple && { perceptual: simple, relative: simple, saturation: simple };
  const toConnection = readTables('A2B', space, tags) ?? everyIntent;
  const fromConnection = readTables('B2A', space, tags) ?? everyIntent;
  if (toConnection || fromConnection) return { toConnection, fromConnection };
  throw profileError(
    'profile-missing-tag',
    'tag table',
    'expected tables, a matrix with curves, or a gray curve, received none',
  );
}

/** One model per distinct table: tags that share their bytes share the model. */
function readTables(prefix: 'A2B' | 'B2A', space: Space, tags: TagTable): Models | null {
  const models = new Map<ProfileBytes, ColourModel>();
  const read = (intent: TableIntent): ColourModel | undefined => {
    const bytes = tags.get(`${prefix}${TABLE_NUMBER[intent]}`);
    if (!bytes) return undefined;
    const model: ColourModel = models.get(bytes) ?? { kind: 'table', lut: readTable(bytes, prefix, space) };
    models.set(bytes, model);
    return model;
  };
  const perceptual = read('perceptual');
  const relative = read('relative');
  const saturation = read('saturation');
  const any = perceptual ?? relative ?? saturation;
  return any
    ? { perceptual: perceptual ?? any, relative: relative ?? any, saturation: saturation ?? any }
    : null;
}

function readTable(bytes: ProfileBytes, prefix: 'A2B' | 'B2A', { space, channels, connection }: Space): Lut {
  requireBytes(bytes, 0, 8, 'a table');
  const type = readSignature(bytes.view, 0);
  const inputIsXyz = prefix === 'A2B' ? space === 'xyz' : connection === 'xyz';
  const lut =
    type === 'mft1' || type === 'mft2'
      ? readLut(bytes, type, inputIsXyz)
      : type === (prefix === 'A2B' ? 'mAB ' : 'mBA ')
        ? readLutAB(bytes, type)
        : null;
  if (!lut) throw profileError('profile-malformed', bytes.where, `expected a table, received type '${type}'`);
  const [inputs, outputs] = prefix === 'A2B' ? [channels, 3] : [3, channels];
  if (lut.inputs !== inputs || lut.outputs !== outputs)
    throw profileError(
      'profile-malformed',
      bytes.where,
      `expected ${inputs} channels to ${outputs}, received ${lut.inputs} to ${lut.outputs}`,
    );
  return lut;
}
