import { measureDeltaE2000 } from '../colour/delta-e-2000.ts';
import type { Triple } from '../colour/triple.ts';
import { compensateBlack } from './adjustment.ts';
import { makeBackwardStages } from './backward-stages.ts';
import { findSourceBlack, findTargetBlack } from './black-point.ts';
import { makeForwardStages } from './forward-stages.ts';
import { makeLinkStages } from './link-stages.ts';
import type { IccProfile } from './profile.ts';
import { makeDeviceRefiner } from './refine-device.ts';
import { copyValues, STAGE_CHANNELS, type Stage } from './stage.ts';

/** Below this a round trip is good enough as it is: well under every limit. */
const REFINE_ABOVE = 2;

/** What a printing condition makes of a colour. Lab is D50, relative to the paper, with black compensated. */
export interface Reproduction {
  readonly deltaE: number;
  readonly sourceLabD50: Triple;
  /** The nearest that was found among the colours that can be printed. */
  readonly printedLabD50: Triple;
}

/** Says for colours of a source space how near a printing condition can come to them. */
export interface GamutJudge {
  /** dE00 between the colour, 0…1 each, and its reproduction: 0…some tens. Allocates nothing. */
  measure(device: ArrayLike<number>): number;
  reproduce(device: ArrayLike<number>): Reproduction;
}

/**
 * Judges by a round trip through the condition's tables, relative colorimetric with black point compensation on both
 * legs: the source's black goes to the condition's black and comes back, so that only what the gamut takes away is
 * left. Where the trip is off, its inverse is refined by one step on the forward table, because an inverse table can
 * lose more between its nodes than the limit of a gamut check; the nearer of the two counts.
 * @throws profile-missing-tag when a profile does not describe the directions that are needed
 */
export function makeGamutJudge(condition: IccProfile, source: IccProfile): GamutJudge {
  const blackOfSource = findSourceBlack(source, 'relative');
  const blackOfPrint = findTargetBlack(condition, 'relative');
  const toLab = [
    ...makeForwardStages(condition, 'relative'),
    ...makeLinkStages(condition.connection, 'lab', null),
  ];
  const fromLab = [
    ...makeLinkStages('lab', condition.connection, null),
    ...makeBackwardStages(condition, 'relative', 'clipped'),
  ];
  const toXyz = [...makeForwardStages(source, 'relative'), ...makeLinkStages(source.connection, 'xyz', null)];
  const toSourceLab = makeLinkStages('xyz', 'lab', compensateBlack(blackOfSource, [0, 0, 0]));
  const toPrintLab = makeLinkStages('xyz', 'lab', compensateBlack(blackOfSource, blackOfPrint));
  const toProofLab = makeLinkStages('lab', 'lab', compensateBlack(blackOfPrint, [0, 0, 0]));
  const refine = makeDeviceRefiner(toLab, condition.channels);

  const wanted = new Float64Array(STAGE_CHANNELS);
  const asked = new Float64Array(STAGE_CHANNELS);
  const ink = new Float64Array(STAGE_CHANNELS);
  const printed = new Float64Array(STAGE_CHANNELS);
  const proof = new Float64Array(STAGE_CHANNELS);
  const plainProof = new Float64Array(STAGE_CHANNELS);
  const compare = (): number => {
    copyValues(printed, proof, 3);
    run(toProofLab, proof);
    return measureDeltaE2000(wanted[0]!, wanted[1]!, wanted[2]!, proof[0]!, proof[1]!, proof[2]!);
  };
  const measure = (device: ArrayLike<number>): number => {
    for (let i = 0; i < source.channels; i++) wanted[i] = device[i]!;
    run(toXyz, wanted);
    copyValues(wanted, asked, 3);
    run(toSourceLab, wanted);
    run(toPrintLab, asked);
    copyValues(asked, ink, 3);
    run(fromLab, ink);
    copyValues(ink, printed, condition.channels);
    run(toLab, printed);
    const plain = compare();
    if (plain <= REFINE_ABOVE) return plain;
    copyValues(proof, plainProof, 3);
    refine(ink, printed, asked);
    const refined = compare();
    if (refined < plain) return refined;
    copyValues(plainProof, proof, 3);
    return plain;
  };
  return {
    measure,
    reproduce(device) {
      const deltaE = measure(device);
      return {
        deltaE,
        sourceLabD50: [wanted[0]!, wanted[1]!, wanted[2]!],
        printedLabD50: [proof[0]!, proof[1]!, proof[2]!],
      };
    },
  };
}

function run(stages: readonly Stage[], values: Float64Array): void {
  for (const stage of stages) stage(values);
}
