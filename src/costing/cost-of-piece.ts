import { practiceLimit } from '../catalogue/practice.ts';
import type { CostInputs } from './cost-inputs.ts';

const MM2_PER_M2 = 1e6;
const MIN_PER_HOUR = 60;

/** What the sum has a term for. */
export const COST_PARTS = [
  'blank',
  'freight',
  'paper',
  'ink',
  'protection',
  'labour',
  'energy',
  'packaging',
  'overhead',
  'sellingFees',
] as const;

export type CostPart = (typeof COST_PARTS)[number];

/** Ink of a print-ready picture: an estimate, since no printer tells what it spends. */
export interface InkUse {
  /** Mean over the picture of the largest ink of a pixel, 0…1. */
  readonly coverage: number;
  readonly areaMm2: number;
  /** With what goes into cleaning and tests. */
  readonly ml: number;
}

/** Amounts are in the currency of the inputs, which is not known here. */
export interface PieceCost {
  /** null where no part is known. */
  readonly perGoodPiece: number | null;
  /** The known ones, in the order of COST_PARTS. */
  readonly parts: readonly { readonly part: CostPart; readonly amount: number }[];
  readonly scrapRate: number;
  readonly ink: InkUse;
  /** Whatever has no price, or no rate; never counted as free. */
  readonly leftOut: readonly (CostPart | 'scrap')[];
}

/**
 * What one good piece costs: (all parts but the fees of selling) / (1 - scrap rate) + these fees. Ink is the covered area
 * by what a square metre takes, and a share that no print shows.
 * @see seeds/practice.json, `ink-per-area` and `hidden-ink`, for what stands in where the inputs do not say (common
 * practice and recalled; no source)
 */
export function costOfPiece(
  inputs: CostInputs,
  { coverage, areaMm2 }: Pick<InkUse, 'coverage' | 'areaMm2'>,
): PieceCost {
  const mlPerM2 = inputs.inkMlPerM2 ?? practiceLimit('ink-per-area').value;
  const hidden = inputs.hiddenInk ?? practiceLimit('hidden-ink').value / 100;
  const ml = coverage * (areaMm2 / MM2_PER_M2) * mlPerM2 * (1 + hidden);
  const amounts: Readonly<Record<CostPart, number | undefined>> = {
    blank: inputs.blank,
    freight: inputs.freight,
    paper: times(inputs.paperSheet, 1 / (inputs.piecesPerSheet ?? 1)),
    ink: times(inputs.inkPerMl, ml),
    protection: inputs.protection,
    labour: times(inputs.labourPerHour, times(inputs.labourMin, 1 / MIN_PER_HOUR)),
    energy: times(inputs.energyPerKwh, inputs.energyKwh),
    packaging: inputs.packaging,
    overhead: inputs.overhead,
    sellingFees: inputs.sellingFees,
  };
  const parts = COST_PARTS.flatMap((part) => {
    const amount = amounts[part];
    return amount === undefined ? [] : [{ part, amount }];
  });
  const { scrapRate = 0 } = inputs;
  const made = parts.reduce((sum, { part, amount }) => sum + (part === 'sellingFees' ? 0 : amount), 0);
  return {
    perGoodPiece: parts.length === 0 ? null : made / (1 - scrapRate) + (amounts.sellingFees ?? 0),
    parts,
    scrapRate,
    ink: { coverage, areaMm2, ml },
    leftOut: [
      ...COST_PARTS.filter((part) => amounts[part] === undefined),
      ...(inputs.scrapRate === undefined ? (['scrap'] as const) : []),
    ],
  };
}

function times(one: number | undefined, other: number | undefined): number | undefined {
  return one === undefined || other === undefined ? undefined : one * other;
}
