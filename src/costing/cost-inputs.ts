import { BlankcheckError } from '../blankcheck-error.ts';
import { nearestIds } from '../catalogue/nearest-ids.ts';

type Kind = 'amount' | 'count' | 'share';

/** What a piece costs is made of these. Amounts are in whatever currency their owner thinks in. */
export const COST_INPUTS = {
  blank: { kind: 'amount', meaning: 'the bare blank' },
  freight: { kind: 'amount', meaning: 'bringing it in' },
  paperSheet: { kind: 'amount', meaning: 'a sheet of transfer paper' },
  piecesPerSheet: { kind: 'count', meaning: 'good pieces from it, 1 where left out' },
  inkPerMl: { kind: 'amount', meaning: 'a millilitre of ink' },
  inkMlPerM2: { kind: 'count', meaning: 'ink on a square metre at full cover' },
  hiddenInk: { kind: 'share', meaning: 'ink for cleaning and tests, beside what is printed' },
  protection: { kind: 'amount', meaning: 'protective paper and tape' },
  labourMin: { kind: 'count', meaning: 'minutes of work' },
  labourPerHour: { kind: 'amount', meaning: 'an hour of it' },
  energyKwh: { kind: 'count', meaning: 'energy of press and printer' },
  energyPerKwh: { kind: 'amount', meaning: 'a kilowatt hour' },
  packaging: { kind: 'amount', meaning: 'packaging' },
  overhead: { kind: 'amount', meaning: 'what the shop costs, for a piece' },
  scrapRate: { kind: 'share', meaning: 'pieces that are spoiled' },
  sellingFees: { kind: 'amount', meaning: 'fees of a sale' },
} as const satisfies Readonly<Record<string, { readonly kind: Kind; readonly meaning: string }>>;

export type CostInput = keyof typeof COST_INPUTS;
export type CostInputs = Readonly<Partial<Record<CostInput, number>>>;

/**
 * Costs as words such as `blank=2.50` or `scrapRate=5%` (which is 0.05); the last word for a name counts.
 * @throws BlankcheckError `bad-cost` for an unknown name or a value out of range: amounts from 0, counts above 0, shares from 0
 * to below 1.
 */
export function readCostInputs(words: readonly string[]): CostInputs {
  return Object.fromEntries(words.map(readCostInput));
}

function readCostInput(word: string): readonly [CostInput, number] {
  const at = word.indexOf('=');
  const name = at < 0 ? word : word.slice(0, at);
  if (!Object.hasOwn(COST_INPUTS, name)) {
    const [near] = nearestIds(name, Object.keys(COST_INPUTS), 1);
    throw new BlankcheckError(
      'bad-cost',
      `Expected a cost such as blank=2.50, received "${word}".\n${near ? `Did you mean ${near}? ` : ''}Known are ${Object.keys(COST_INPUTS).join(', ')}.`,
    );
  }
  const { kind } = COST_INPUTS[name as CostInput];
  const value = readNumber(word.slice(at + 1), kind);
  if (at >= 0 && isInRange(value, kind)) return [name as CostInput, value];
  throw new BlankcheckError('bad-cost', `Expected ${EXPECTED[kind]} for ${name}, received "${word}".`);
}

const EXPECTED: Readonly<Record<Kind, string>> = {
  amount: `a number from 0, with a point and without a currency, such as 2.50`,
  count: 'a number above 0, such as 4',
  share: 'a share from 0 to below 1, such as 0.05 or 5%',
};

function readNumber(text: string, kind: Kind): number {
  const [, digits, percent] = /^(\d+(?:\.\d+)?)(%?)$/.exec(text.trim()) ?? [];
  if (digits === undefined || (percent && kind !== 'share')) return Number.NaN;
  return Number(digits) / (percent ? 100 : 1);
}

function isInRange(value: number, kind: Kind): boolean {
  if (!Number.isFinite(value)) return false;
  return kind === 'amount' ? true : kind === 'count' ? value > 0 : value < 1;
}
