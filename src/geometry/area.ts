import { MM_PER_INCH } from './length.ts';

/** An area for people in both units: `12.3 cm2 (1.91 sq in)`; below 1 cm2 in mm2, and what is smaller than that as such. */
export function formatArea(mm2: number): string {
  if (mm2 > 0 && mm2 < 1) return 'less than 1 mm2';
  const metric = mm2 < 100 ? `${round(mm2, 0)} mm2` : `${round(mm2 / 100, 1)} cm2`;
  return `${metric} (${round(mm2 / MM_PER_INCH ** 2, 2)} sq in)`;
}

function round(value: number, decimals: number): string {
  return String(Number(value.toFixed(decimals)));
}
