import { practiceLimit } from '../catalogue/practice.ts';
import { measureDeltaE2000 } from '../colour/delta-e-2000.ts';
import { xyzToLabD50 } from '../colour/lab.ts';
import { LUMA_BLUE, LUMA_GREEN, LUMA_RED } from '../colour/luma.ts';
import { decodeSrgb } from '../colour/srgb.ts';
import type { InkColour } from '../geometry/drawing.ts';
import { makeForwardStages } from '../icc/forward-stages.ts';
import { makeLinkStages } from '../icc/link-stages.ts';
import type { IccProfile } from '../icc/profile.ts';
import { STAGE_CHANNELS } from '../icc/stage.ts';
import type { FlatBox } from './flat-box.ts';

const STEP = practiceLimit('visible-step').value;
/** At least so light and at most so coloured is meant to be white (own choice). */
const NEAR_WHITE = { lightness: 94, chroma: 5 } as const;

/** How a flat ground stands out from the bare blank. */
export interface BoxStep {
  /** L* of the base less that of the ground on it. */
  readonly lightnessStep: number;
  readonly deltaE00: number;
  /** Whether an eye sees it beside the bare blank. */
  readonly visible: boolean;
  /** Whether it was meant to be white. */
  readonly nearWhite: boolean;
}

/**
 * The step of a ground's colour, given in the profile `source`, over the bare base. Dye filters what the base gives
 * back, which is taken as neutral, with the luminance of its colour (derived).
 */
export function measureBoxStep(colour: FlatBox['colour'], source: IccProfile, base: InkColour): BoxStep {
  const light = (sample: number) => decodeSrgb(sample / 255);
  const luminance = LUMA_RED * light(base.r) + LUMA_GREEN * light(base.g) + LUMA_BLUE * light(base.b);
  const toXyzD50 = makeXyzD50(source);
  const [groundXyz, whiteXyz] = [toXyzD50(colour), toXyzD50(colour.map(() => 1))];
  const labD50On = ([x, y, z]: readonly [number, number, number], factor: number) =>
    xyzToLabD50([x * factor, y * factor, z * factor]);
  const [bare, dyed] = [labD50On(whiteXyz, luminance), labD50On(groundXyz, luminance)];
  const lightnessStep = bare[0] - dyed[0];
  const deltaE00 = measureDeltaE2000(bare[0], bare[1], bare[2], dyed[0], dyed[1], dyed[2]);
  const paper = labD50On(groundXyz, 1);
  return {
    lightnessStep,
    deltaE00,
    visible: lightnessStep >= STEP || deltaE00 >= STEP,
    nearWhite: paper[0] >= NEAR_WHITE.lightness && Math.hypot(paper[1], paper[2]) <= NEAR_WHITE.chroma,
  };
}

/** From device colours to XYZ (D50), by the profile's own model. */
function makeXyzD50(source: IccProfile) {
  const stages = [
    ...makeForwardStages(source, 'relative'),
    ...makeLinkStages(source.connection, 'xyz', null),
  ];
  return (device: readonly number[]): [number, number, number] => {
    const values = new Float64Array(STAGE_CHANNELS);
    values.set(device);
    for (const stage of stages) stage(values);
    return [values[0]!, values[1]!, values[2]!];
  };
}
