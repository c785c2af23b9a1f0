import type { PressureRange, PressureWord } from './press-records.ts';
import { PRESSURE_WORDS } from './seed-data.ts';

/**
 * What a pressure word means on the work, for orientation: hobby presses are not calibrated. `light-medium` runs from
 * the least of light to the most of medium. null for wraps and sleeves, which have no gauge.
 */
export function findPressureRange(word: PressureWord): PressureRange | null {
  if (word === 'wrap tension' || word === 'sleeve tension') return null;
  const words = word.split('-') as ('light' | 'medium' | 'firm')[];
  const first = PRESSURE_WORDS[words[0]!];
  const last = PRESSURE_WORDS[words.at(-1)!];
  return { psi: join(first.psi, last.psi), bar: join(first.bar, last.bar) };
}

type Range = PressureRange['psi'];

function join(first: Range, last: Range): Range {
  return last.max === undefined ? { min: first.min } : { min: first.min, max: last.max };
}
