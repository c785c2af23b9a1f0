import { formatTemperature } from '../ledger/heat.ts';
import type { PressedRecipe, Pressing } from '../ledger/pressing.ts';
import { secondsInWords } from './press-words.ts';
import { showHidden } from './visible-text.ts';

/** `400 F (204.4 C), 196 C (384.8 F) on the platen, for 300 s (5 min), firm pressure`; empty where nothing is known. */
export function recipeInWords({ temperature, platenTemperature, timeS, pressure }: PressedRecipe): string {
  const heat = [
    ...(temperature ? [formatTemperature(temperature)] : []),
    ...(platenTemperature ? [`${formatTemperature(platenTemperature)} on the platen`] : []),
    ...(timeS === undefined ? [] : [`${secondsInWords(timeS)}`]),
    ...(pressure ? [pressure === 'tension' ? 'by tension' : `${pressure} pressure`] : []),
  ];
  return heat.join(', ');
}

/** `paper coated 100 g, printer shed, lot 7, measured 197x197mm`; empty where nothing is known. */
export function meansInWords({
  printer,
  paper,
  blank,
}: Pick<Pressing, 'printer' | 'paper' | 'blank'>): string {
  return [
    ...(paper ? [`paper ${paper}`] : []),
    ...(printer ? [`printer ${printer}`] : []),
    ...(blank.lot ? [`lot ${blank.lot}`] : []),
    ...(blank.measured ? [`measured ${blank.measured}`] : []),
  ]
    .map(showHidden)
    .join(', ');
}

/** The day of an instant or a day (ISO 8601, in UTC). */
export function dayOf(at: string): string {
  return at.slice(0, 'yyyy-mm-dd'.length);
}
