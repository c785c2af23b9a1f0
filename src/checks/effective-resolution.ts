import type { VectorFacts } from '../formats/artwork.ts';
import type { BlankInHand } from '../job/job.ts';
import { defineCheck } from './define-check.ts';
import type { Finding } from './finding.ts';
import { findMissedLimit, LIMIT_WORDS, phraseLargestSize } from './ppi-limit.ts';

interface Inputs {
  readonly ppi: { readonly x: number; readonly y: number };
  readonly widthMm: number;
  readonly heightMm: number;
  readonly limits: BlankInHand['resolution'];
  readonly vector: VectorFacts | null;
  /** The file is one of the program's own: no size makes art of it. */
  readonly isPrepared: boolean;
}

export default defineCheck<Inputs>({
  id: 'effective-resolution',
  title: 'Effective resolution at the print size',
  reason:
    'Too few pixels for the printed size show as blur and steps; pressing hides nothing on a glossy blank.',
  source: [
    '1 arcminute of sight at the viewing distance: 3438 / inches (derived)',
    'limits of the family in seeds/families.json (common practice, no source)',
  ],
  codes: { 'below-stop': ['error'], 'below-acceptable': ['warning'], 'below-good': ['advice'] },
  needs: ({ artwork, job }) =>
    job === null
      ? { skip: 'nothing is visible, so there is no print size' }
      : {
          inputs: {
            ppi: job.effectivePpi,
            widthMm: job.placementMm.width,
            heightMm: job.placementMm.height,
            limits: job.blank.resolution,
            vector: artwork.vector,
            isPrepared: artwork.printRecord !== null,
          },
        },
  run: (inputs) => {
    if (inputs.vector === null) return { findings: judge(inputs, Math.min(inputs.ppi.x, inputs.ppi.y), {}) };
    const { pictures, unplacedPictures } = inputs.vector;
    const worst = worstPicturePpi(inputs.vector, inputs.ppi);
    const facts = { vector: true, pictures: pictures.length };
    const findings = worst === null ? [] : judge(inputs, worst, facts);
    if (unplacedPictures === 0) return { findings, facts };
    return {
      findings,
      skip: `${unplacedPictures === 1 ? 'a picture' : `${unplacedPictures} pictures`} inside the drawing, in a pattern or a mask, could not be measured`,
    };
  },
  phrases: {
    'below-stop': (finding) => phrase(finding, 'it will look blurred or stepped'),
    'below-acceptable': (finding) => phrase(finding, 'it will look soft'),
    'below-good': (finding) => phrase(finding, 'fine for photos, soft for lettering and line art'),
  },
});

/** The drawing itself is drawn at the print resolution; the pictures inside it are not. */
function worstPicturePpi(vector: VectorFacts, ppi: Inputs['ppi']): number | null {
  if (vector.pictures.length === 0) return null;
  return vector.pictures.reduce((worst, picture) => {
    const across = (picture.widthPx / picture.shownWidthPx) * ppi.x;
    const down = (picture.heightPx / picture.shownHeightPx) * ppi.y;
    return Math.min(worst, across, down);
  }, Infinity);
}

function judge(
  { limits, widthMm, heightMm, isPrepared }: Inputs,
  ppi: number,
  facts: Finding['facts'],
): Finding[] {
  const missed = findMissedLimit(ppi, limits);
  if (missed === null) return [];
  const { code, severity, limit, aim } = missed;
  // The other axis shrinks along, so the proportions of the print stay.
  const share = ppi / aim.value;
  return [
    {
      code,
      severity,
      actual: { value: ppi, unit: 'ppi' },
      expected: { min: limit.value, unit: 'ppi', from: limit.from },
      facts: {
        ...facts,
        ...(isPrepared ? { prepared: true } : {}),
        aimPpi: aim.value,
        widthAtAimMm: widthMm * share,
        heightAtAimMm: heightMm * share,
        enlargeBy: 1 / share,
      },
    },
  ];
}

function phrase({ code, actual, expected, facts }: Finding, effect: string): string {
  const what = facts.vector ? 'A picture inside the drawing has' : 'The art has';
  const words = LIMIT_WORDS[code]!;
  const smaller = phraseLargestSize(Number(facts.widthAtAimMm), Number(facts.heightAtAimMm));
  const larger = Math.ceil(Number(facts.enlargeBy) * 10) / 10;
  const remedy = facts.prepared
    ? 'Start from the original art'
    : `${smaller ? `Print it ${smaller} (${facts.aimPpi} ppi, ${words.aim}), or get` : 'Get'} a file with ${larger} times as many pixels each way`;
  return `${what} ${tellPpi(actual!.value)} pixels per inch at this print size, expected at least ${expected!.min} ${words.least}: ${effect}. ${remedy}.`;
}

/** Rounded down, as for the limits; a tenth where a whole number would say nothing. */
function tellPpi(ppi: number): number {
  return ppi < 10 ? Math.floor(ppi * 10) / 10 : Math.floor(ppi);
}
