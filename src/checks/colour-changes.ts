import { nameColour } from '../colour/name-colour.ts';
import type { Triple } from '../colour/triple.ts';
import type { GamutTable } from '../icc/gamut-table.ts';
import { LAB_PROFILE } from '../icc/lab-profile.ts';
import { once } from '../icc/once.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import { makeTransform } from '../icc/transform.ts';
import type { ColourBins } from './colour-bins.ts';

/** A colour that the printer cannot make. Colours as `#rrggbb` in sRGB, clipped where it cannot hold them. */
export type ColourChange = {
  readonly colour: string;
  readonly name: string;
  readonly becomes: string;
  readonly becomesName: string;
  readonly deltaE: number;
  /** Of the visible art. */
  readonly sharePercent: number;
};

/** Colours that are told one by one. */
const TOLD = 10;
/** Bins that are looked at for the kinds of colours: what is rarer names nothing. */
const LOOKED_AT = 256;
const KINDS = 3;

/** The most common colours over the limit, each with what it becomes. Judged exactly, not through the table. */
export function listColourChanges(
  bins: ColourBins,
  table: GamutTable,
  visiblePixels: number,
): readonly ColourChange[] {
  return bins
    .list(LOOKED_AT)
    .map(({ pixels, mean }) => ({ pixels, ...table.reproduce(mean) }))
    .filter(({ deltaE }) => deltaE > table.limit)
    .slice(0, TOLD)
    .map(({ pixels, deltaE, sourceLabD50, printedLabD50 }) => {
      const [from, to] = [toSrgbCodes(sourceLabD50), toSrgbCodes(printedLabD50)];
      return {
        colour: toHex(from),
        name: nameColour(from),
        becomes: toHex(to),
        becomesName: nameColour(to),
        deltaE,
        sharePercent: (pixels / visiblePixels) * 100,
      };
    });
}

/** What kinds of colours they are, the most common first: `bright greens, deep blues`. */
export function nameKinds(bins: ColourBins, table: GamutTable): string {
  const pixelsOf = new Map<string, number>();
  for (const { pixels, mean } of bins.list(LOOKED_AT)) {
    const name = nameColour(toSrgbCodes(table.reproduce(mean).sourceLabD50));
    pixelsOf.set(name, (pixelsOf.get(name) ?? 0) + pixels);
  }
  return [...pixelsOf]
    .sort(([, a], [, b]) => b - a)
    .slice(0, KINDS)
    .map(([name]) => `${name}s`)
    .join(', ');
}

const labToSrgb = once(() =>
  makeTransform(LAB_PROFILE, SRGB_PROFILE, { intent: 'relative', blackPointCompensation: false }),
);

function toSrgbCodes(labD50: Triple): Triple {
  const [r = 0, g = 0, b = 0] = labToSrgb().convert(labD50);
  return [Math.round(r * 255), Math.round(g * 255), Math.round(b * 255)];
}

function toHex(codes: Triple): string {
  return `#${codes.map((code) => code.toString(16).padStart(2, '0')).join('')}`;
}
