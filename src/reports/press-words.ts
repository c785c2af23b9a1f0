import type { CardRecipe } from '../catalogue/card-recipe.ts';
import type { PressRecipe } from '../catalogue/press-records.ts';
import type { Span } from '../catalogue/records.ts';
import { roundNumber } from './round-numbers.ts';

/** `196-204`, or `60` where both ends are the same. */
export function spanInWords({ min, max }: Span): string {
  return min === max ? `${roundNumber(min)}` : `${roundNumber(min)}-${roundNumber(max)}`;
}

/** `300 s (5 min)`, `75 s (1 min 15 s)`, `45 s`. */
export function secondsInWords(seconds: number): string {
  if (seconds < 60) return `${roundNumber(seconds)} s`;
  const rest = seconds % 60;
  const minutes = `${Math.floor(seconds / 60)} min`;
  return `${roundNumber(seconds)} s (${rest === 0 ? minutes : `${minutes} ${roundNumber(rest)} s`})`;
}

/** The point to try first: `204 C (400 F) for 300 s (5 min), firm pressure`. */
export function startInWords({ recipe, timeS }: CardRecipe): string {
  const each = recipe.timeIsPer === 'position' ? ' at each position' : '';
  const { temperatureC, temperatureF } = recipe;
  return `${temperatureC.start} C (${temperatureF.start} F) for ${secondsInWords(timeS.start)}${each}, ${pressureInWords(recipe)}`;
}

/** `196-204 C (385-400 F)`. */
export function temperatureInWords({ temperatureC, temperatureF }: PressRecipe): string {
  return `${spanInWords(temperatureC)} C (${spanInWords(temperatureF)} F)`;
}

/** `240-480 s (4-8 min)`, with the positions where the time is per position. Short times are not told in minutes. */
export function timeInWords({ recipe, timeS, timeMinutes }: CardRecipe): string {
  const minutes = timeS.max < 120 ? '' : ` (${tenths(timeMinutes.min)}-${tenths(timeMinutes.max)} min)`;
  const positions = recipe.positions
    ? ` at each of ${recipe.positions.usual} positions (sometimes ${recipe.positions.sometimes})`
    : '';
  return `${spanInWords(timeS)} s${minutes}${positions}`;
}

function tenths(value: number): string {
  return `${Math.round(value * 10) / 10}`;
}

/** `firm pressure`, `wrap tension`. */
export function pressureInWords({ pressure, pressureNote }: PressRecipe): string {
  const words = pressure.endsWith('tension') ? pressure : `${pressure} pressure`;
  return pressureNote ? `${words} (${pressureNote})` : words;
}

/** `about 35-45 psi (2.4-3.1 bar) on the work`; empty for wraps and sleeves. */
export function workPressureInWords({ pressureOnWork }: CardRecipe): string {
  if (!pressureOnWork) return '';
  const { psi, bar } = pressureOnWork;
  return psi.max === undefined || bar.max === undefined
    ? `about ${psi.min} psi (${bar.min} bar) and up on the work`
    : `about ${psi.min}-${psi.max} psi (${bar.min}-${bar.max} bar) on the work`;
}
