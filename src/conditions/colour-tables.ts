import { type GamutTable, makeGamutTable } from '../icc/gamut-table.ts';
import { type LightnessTable, makeLightnessTable } from '../icc/lightness-table.ts';
import type { IccProfile } from '../icc/profile.ts';

/** What the printing condition loses of the colours of a source space; made once for each pair, and kept with it. */
export const gamutTableOf: TableOf<GamutTable> = keep(makeGamutTable);

/** Lightness in the source and in the print; made once for each pair, and kept with it. */
export const lightnessTableOf: TableOf<LightnessTable> = keep(makeLightnessTable);

type TableOf<Table> = (condition: IccProfile, source: IccProfile) => Table;

function keep<Table>(make: TableOf<Table>): TableOf<Table> {
  const kept = new WeakMap<IccProfile, WeakMap<IccProfile, Table>>();
  return (condition, source) => {
    const bySource = kept.get(condition) ?? new WeakMap<IccProfile, Table>();
    kept.set(condition, bySource);
    const table = bySource.get(source) ?? make(condition, source);
    bySource.set(source, table);
    return table;
  };
}
