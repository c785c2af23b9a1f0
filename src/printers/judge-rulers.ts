import { BlankcheckError } from '../blankcheck-error.ts';
import { practiceLimit } from '../catalogue/practice.ts';
import { formatMillimetres } from '../geometry/length.ts';
import type { PointMm } from '../geometry/rectangle.ts';
import { type FitExplanation, listFitExplanations } from './fit-explanations.ts';
import type { Printer } from './printer.ts';

/** Length of the rulers on a sheet that has room for them. */
export const RULER_MM = practiceLimit('ruler-length').value;

const FIT_PERCENT = practiceLimit('ruler-fit').value;
const BORDERLESS_LEAST_PERCENT = practiceLimit('borderless-least').value;
const BORDERLESS_MOST_PERCENT = practiceLimit('borderless-most').value;
const CORRECTABLE_PERCENT = practiceLimit('correctable-scale').value;
/** Nobody reads a ruler this wrong: another unit, or a slip of the pen. */
const MISREAD_PERCENT = practiceLimit('ruler-misread').value;

/** Two rulers of one page: x across the sheet as it was fed, y along it. In mm. */
export interface MeasuredRulers {
  readonly measuredMm: PointMm;
  /** What the rulers say of themselves; `RULER_MM` each by default. */
  readonly nominalMm?: PointMm;
}

type ScaleCorrection = Printer['scaleCorrection'];

/** What two measured rulers tell of a printer. Deviations are of what was measured, in percent, below 0 where short. */
export interface RulerVerdict {
  readonly code: 'exact' | 'corrected' | 'fit-to-page' | 'borderless' | 'implausible';
  readonly deviationPercent: PointMm;
  /** Of `fit-to-page`: what explains it best. */
  readonly explanation: FitExplanation | null;
  /** Of `corrected`: what the record should hold from now on; of the others what it holds. */
  readonly scaleCorrection: ScaleCorrection;
}

/**
 * Tells faults of the print dialog, which are to be switched off, from the small errors of a printer, which are drawn
 * against. A page printed with a correction k whose ruler of n measures m asks for k n / m.
 * @throws BlankcheckError `bad-ruler` for lengths that are no reading of these rulers
 */
export function judgeRulers(printer: Printer, rulers: MeasuredRulers): RulerVerdict {
  const nominal = rulers.nominalMm ?? { x: RULER_MM, y: RULER_MM };
  const measured = rulers.measuredMm;
  checkReading('x', measured.x, nominal.x);
  checkReading('y', measured.y, nominal.y);
  const deviationPercent = {
    x: percentOff(measured.x / nominal.x),
    y: percentOff(measured.y / nominal.y),
  };
  const { x, y } = deviationPercent;
  const verdict = (code: RulerVerdict['code'], changes: Partial<RulerVerdict> = {}): RulerVerdict => ({
    code,
    deviationPercent,
    explanation: null,
    scaleCorrection: printer.scaleCorrection,
    ...changes,
  });
  if (x === 0 && y === 0) return verdict('exact');
  const explanation = x < 0 && y < 0 ? explainFit(printer, deviationPercent) : null;
  if (explanation) return verdict('fit-to-page', { explanation });
  if (isBorderless(x) && isBorderless(y)) return verdict('borderless');
  const { scan, feed } = printer.scaleCorrection;
  const scaleCorrection = {
    scan: roundFactor((scan * nominal.x) / measured.x),
    feed: roundFactor((feed * nominal.y) / measured.y),
  };
  // What the printer does by itself counts too: small steps must not add up to what one step may not be.
  const small = [x, y, percentOff(1 / scaleCorrection.scan), percentOff(1 / scaleCorrection.feed)].every(
    (percent) => Math.abs(percent) < CORRECTABLE_PERCENT,
  );
  return small ? verdict('corrected', { scaleCorrection }) : verdict('implausible');
}

function explainFit(printer: Printer, { x, y }: PointMm): FitExplanation | null {
  const distance = ({ factor }: FitExplanation) =>
    round(Math.max(Math.abs(x - percentOff(factor)), Math.abs(y - percentOff(factor))));
  const [best] = listFitExplanations(printer)
    // A factor that cannot be told from 1 explains nothing.
    .filter((one) => -percentOff(one.factor) > FIT_PERCENT && distance(one) <= FIT_PERCENT)
    .sort((one, other) => distance(one) - distance(other));
  return best ?? null;
}

function isBorderless(percent: number): boolean {
  return percent >= BORDERLESS_LEAST_PERCENT && percent <= BORDERLESS_MOST_PERCENT;
}

/** The billionth, so that 80.8 of 80 mm is 1 % and not a little less. */
const round = (value: number) => Math.round(value * 1e9) / 1e9;
const percentOff = (factor: number) => round((factor - 1) * 100);
/** A millionth is a thousandth of a millimetre on a metre: finer than anybody reads. */
const roundFactor = (factor: number) => Math.round(factor * 1e6) / 1e6;

function checkReading(axis: 'x' | 'y', measuredMm: number, nominalMm: number): void {
  if (!(nominalMm > 0 && Number.isFinite(nominalMm)))
    throw new BlankcheckError(
      'bad-ruler',
      `Expected a length above 0 for the ${axis} ruler, received ${nominalMm} mm.`,
    );
  const percent = Math.abs(percentOff(measuredMm / nominalMm));
  if (measuredMm > 0 && percent <= MISREAD_PERCENT) return;
  const least = nominalMm * (1 - MISREAD_PERCENT / 100);
  const most = nominalMm * (1 + MISREAD_PERCENT / 100);
  throw new BlankcheckError(
    'bad-ruler',
    `Expected ${formatMillimetres(least)} to ${formatMillimetres(most)} for the ${axis} ruler of ${formatMillimetres(nominalMm)}, received ${formatMillimetres(measuredMm)}.\nMeasure from end to end, in the unit that you write. Where the page says that its ruler is shorter, give --ruler-length.`,
  );
}
