import type { TransformOptions } from '../icc/adjustment.ts';
import { type GamutMap, makeGamutMap } from '../icc/gamut-map.ts';
import { type GamutGrid, type GamutTable, makeGamutTable } from '../icc/gamut-table.ts';
import { type LightnessTable, makeLightnessTable } from '../icc/lightness-table.ts';
import type { IccProfile } from '../icc/profile.ts';
import { makeProofTable, type ProofTable } from '../icc/proof-table.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { DRIVER_CONVERSION } from './printer-conversion.ts';

/** What the tables of conditions for sRGB pictures are made from, where it was measured before. */
const measured = new WeakMap<IccProfile, GamutGrid>();

/** What the printing condition loses of the colours of a source space; made once for each pair, and kept with it. */
export const gamutTableOf: TableOf<GamutTable> = keep((condition, source) =>
  makeGamutTable(condition, source, source === SRGB_PROFILE ? measured.get(condition) : undefined),
);

/** Saves the measuring for pictures in sRGB. */
export function rememberGamutGrid(condition: IccProfile, grid: GamutGrid): void {
  measured.set(condition, grid);
}

/** Lightness in the source and in the print, converted so; made once for each way, and kept with the condition. */
export function lightnessTableOf(
  condition: IccProfile,
  source: IccProfile,
  { intent, blackPointCompensation }: TransformOptions = DRIVER_CONVERSION,
): LightnessTable {
  const way = `${intent}${blackPointCompensation ? ' compensated' : ''}`;
  const tableOf =
    lightnessTables.get(way) ??
    keep((profile, of) => makeLightnessTable(profile, of, { intent, blackPointCompensation }));
  lightnessTables.set(way, tableOf);
  return tableOf(condition, source);
}

/** One for each intent, with and without compensation. */
const lightnessTables = new Map<string, TableOf<LightnessTable>>();

/** How colours are brought into what the condition makes; null where the source has no way back to its samples. */
export const gamutMapOf: TableOf<GamutMap | null> = keep((condition, source) =>
  makeGamutMap(source, gamutTableOf(condition, source)),
);

/** How colours of a source space look once printed; made once for each pair, and kept with the condition. */
export const proofTableOf: TableOf<ProofTable> = keep(makeProofTable);

type TableOf<Table> = (condition: IccProfile, source: IccProfile) => Table;

function keep<Table>(make: TableOf<Table>): TableOf<Table> {
  const kept = new WeakMap<IccProfile, WeakMap<IccProfile, Table>>();
  return (condition, source) => {
    const bySource = kept.get(condition) ?? new WeakMap<IccProfile, Table>();
    kept.set(condition, bySource);
    if (!bySource.has(source)) bySource.set(source, make(condition, source));
    return bySource.get(source)!;
  };
}

/** Makes what pictures of 8 bits in sRGB, which most are, will ask of a condition: to be called when there is time. */
export function warmColourTables(condition: IccProfile, conversion?: TransformOptions): void {
  const black = new Uint8Array(3);
  gamutTableOf(condition, SRGB_PROFILE).measure8(black, new Uint16Array(1), 1);
  lightnessTableOf(condition, SRGB_PROFILE, conversion).measure8(black, new Uint16Array(2), 1);
}
