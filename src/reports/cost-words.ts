import type { CostPart, PieceCost } from '../costing/cost-of-piece.ts';

const WORDS: Readonly<Record<CostPart | 'scrap', string>> = {
  blank: 'blank',
  freight: 'freight',
  paper: 'transfer paper',
  ink: 'ink',
  protection: 'protective paper and tape',
  labour: 'labour',
  energy: 'energy',
  packaging: 'packaging',
  overhead: 'overhead',
  sellingFees: 'fees of selling',
  scrap: 'spoiled pieces',
};
const NEVER_KNOWN = 'wear of printer and press, and taxes';

/** What a good piece costs, as rows of a label and a text; what is left out is always one of them. */
export function costRows({
  perGoodPiece,
  parts,
  scrapRate,
  ink,
  leftOut,
}: PieceCost): readonly (readonly [label: string, text: string])[] {
  const spoiled = scrapRate > 0 ? `; ${percent(scrapRate)} of them spoiled` : '';
  const sum = parts.map(({ part, amount }) => `${WORDS[part]} ${inMoney(amount)}`).join(', ');
  return [
    ['Good piece', perGoodPiece === null ? 'not known: no cost was given' : inMoney(perGoodPiece)],
    ...(parts.length > 0 ? [['Made of', `${sum}${spoiled}`] as const] : []),
    ['Ink', `about ${Number(ink.ml.toPrecision(2))} ml at ${percent(ink.coverage)} cover, an estimate`],
    ['Left out', [...leftOut.map((part) => WORDS[part]), NEVER_KNOWN].join(', ')],
  ];
}

/** Without a currency: whole cents, and of less two figures that count. */
function inMoney(amount: number): string {
  return amount >= 0.1 || amount === 0 ? amount.toFixed(2) : String(Number(amount.toPrecision(2)));
}

function percent(share: number): string {
  return `${Number((share * 100).toPrecision(2))} %`;
}
