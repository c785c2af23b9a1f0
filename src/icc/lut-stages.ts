import { type Curve, evaluateCurve, isIdentity } from './curve.ts';
import { makeGridStage } from './grid-stage.ts';
import type { Lut, LutElement } from './lut.ts';
import { matrixStage } from './matrix-stage.ts';
import type { Stage } from './stage.ts';

/** The elements of a table as stages on values 0…1. */
export function makeLutStages(lut: Lut): Stage[] {
  return lut.elements.map(makeElementStage);
}

function makeElementStage(element: LutElement): Stage {
  if (element.kind === 'grid') return makeGridStage(element);
  if (element.kind === 'curves')
    return element.curves.every(isIdentity) ? clipStage(element.curves.length) : curveStage(element.curves);
  return matrixStage(element.matrix, element.offset);
}

function curveStage(curves: readonly Curve[]): Stage {
  const tables = curves.flatMap((curve) => (curve.kind === 'table' ? [curve.values] : []));
  if (tables.length === curves.length) return tableStage(tables);
  return (values) => {
    for (let i = 0; i < curves.length; i++) values[i] = evaluateCurve(curves[i]!, values[i]!);
  };
}

/** `evaluateCurve` for sampled curves alone, flat: most tables have nothing else. */
function tableStage(tables: readonly Uint16Array[]): Stage {
  const channels = tables.length;
  const lasts = Int32Array.from(tables, (table) => table.length - 1);
  const starts = new Int32Array(channels);
  for (let i = 1; i < channels; i++) starts[i] = starts[i - 1]! + tables[i - 1]!.length;
  const samples = new Float64Array(tables.reduce((sum, table) => sum + table.length, 0));
  for (const [i, table] of tables.entries())
    for (let j = 0; j < table.length; j++) samples[starts[i]! + j] = table[j]! / 65535;
  return (values) => {
    for (let i = 0; i < channels; i++) {
      const last = lasts[i]!;
      const value = values[i]!;
      const place = value > 0 ? (value < 1 ? value * last : last) : 0;
      const cell = place < last ? Math.floor(place) : last - 1;
      const at = starts[i]! + cell;
      const low = samples[at]!;
      values[i] = low + (samples[at + 1]! - low) * (place - cell);
    }
  };
}

/** Also curves that change nothing clip: the domain of every element is 0…1. */
function clipStage(channels: number): Stage {
  return (values) => {
    for (let i = 0; i < channels; i++) values[i] = Math.min(1, Math.max(0, values[i]!));
  };
}
