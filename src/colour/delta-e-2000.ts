import type { Triple } from './triple.ts';

const DEGREES = 180 / Math.PI;
const CHROMA_PIVOT = 25 ** 7;
const [COS_30, SIN_30] = cosSin(30);
const [COS_6, SIN_6] = cosSin(6);
const [COS_63, SIN_63] = cosSin(63);
/**
 * Hues exactly 180 degrees apart count as not more than 180 apart: rounding in atan2 must not decide which way the
 * mean hue goes (published pairs 10 and 14).
 */
const HALF_TURN = 180 + 1e-9;

/**
 * CIEDE2000 colour difference with kL = kC = kH = 1; 0 for equal colours, the same both ways round. About 1 is
 * just seen side by side.
 * @see G. Sharma, W. Wu, E. N. Dalal, Color Research & Application 30(1), 2005; ISO/CIE 11664-6:2014
 */
export function deltaE2000(firstLabD50: Triple, secondLabD50: Triple): number {
  return measureDeltaE2000(
    firstLabD50[0],
    firstLabD50[1],
    firstLabD50[2],
    secondLabD50[0],
    secondLabD50[1],
    secondLabD50[2],
  );
}

/** The same on bare numbers, for loops over tables: nothing is allocated. */
export function measureDeltaE2000(
  l1: number,
  a1: number,
  b1: number,
  l2: number,
  a2: number,
  b2: number,
): number {
  const chroma7 = power7((Math.sqrt(a1 * a1 + b1 * b1) + Math.sqrt(a2 * a2 + b2 * b2)) / 2);
  const stretch = 1 + 0.5 * (1 - Math.sqrt(chroma7 / (chroma7 + CHROMA_PIVOT)));
  const wideA1 = a1 * stretch;
  const wideA2 = a2 * stretch;
  const c1 = Math.sqrt(wideA1 * wideA1 + b1 * b1);
  const c2 = Math.sqrt(wideA2 * wideA2 + b2 * b2);
  const h1 = hueDegrees(wideA1, b1);
  const h2 = hueDegrees(wideA2, b2);

  const bothChromatic = c1 * c2 !== 0;
  let hueStep = bothChromatic ? h2 - h1 : 0;
  if (hueStep > HALF_TURN) hueStep -= 360;
  else if (hueStep < -HALF_TURN) hueStep += 360;
  const deltaL = l2 - l1;
  const deltaC = c2 - c1;
  const deltaH = 2 * Math.sqrt(c1 * c2) * Math.sin(hueStep / 2 / DEGREES);

  let hueSum = h1 + h2;
  if (bothChromatic && Math.abs(h1 - h2) > HALF_TURN) hueSum += hueSum < 360 ? 360 : -360;
  const meanHue = bothChromatic ? hueSum / 2 : hueSum;
  const meanC = (c1 + c2) / 2;
  const lightness = ((l1 + l2) / 2 - 50) ** 2;

  // Cosines of the hue's multiples by the double angle: this function is what tables are made of.
  const cos1 = Math.cos(meanHue / DEGREES);
  const sin1 = Math.sin(meanHue / DEGREES);
  const cos2 = cos1 * cos1 - sin1 * sin1;
  const sin2 = 2 * sin1 * cos1;
  const t =
    1 -
    0.17 * (cos1 * COS_30 + sin1 * SIN_30) +
    0.24 * cos2 +
    0.32 * ((cos2 * cos1 - sin2 * sin1) * COS_6 - (sin2 * cos1 + cos2 * sin1) * SIN_6) -
    0.2 * ((cos2 * cos2 - sin2 * sin2) * COS_63 + 2 * sin2 * cos2 * SIN_63);
  const weightL = 1 + (0.015 * lightness) / Math.sqrt(20 + lightness);
  const weightC = 1 + 0.045 * meanC;
  const weightH = 1 + 0.015 * meanC * t;
  const meanC7 = power7(meanC);
  const turn = 60 * Math.exp(-(((meanHue - 275) / 25) ** 2));
  const rotation = -2 * Math.sqrt(meanC7 / (meanC7 + CHROMA_PIVOT)) * Math.sin(turn / DEGREES);

  const stepL = deltaL / weightL;
  const stepC = deltaC / weightC;
  const stepH = deltaH / weightH;
  return Math.sqrt(Math.max(0, stepL * stepL + stepC * stepC + stepH * stepH + rotation * stepC * stepH));
}

/** Hue angle 0…360; 0 for a gray. */
function hueDegrees(a: number, b: number): number {
  if (a === 0 && b === 0) return 0;
  const angle = Math.atan2(b, a) * DEGREES;
  return angle < 0 ? angle + 360 : angle;
}

function power7(x: number): number {
  const cube = x * x * x;
  return cube * cube * x;
}

function cosSin(degrees: number): readonly [number, number] {
  return [Math.cos(degrees / DEGREES), Math.sin(degrees / DEGREES)];
}
