import type { PrinterConversion } from '../conditions/printer-conversion.ts';
import type { PrintingCondition } from '../conditions/printing-condition.ts';
import type { IccProfile } from '../icc/profile.ts';
import { SRGB_PROFILE } from '../icc/srgb-profile.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import type { Needs, PrintPicture, Subject } from './define-check.ts';
import type { Fact, Severity } from './finding.ts';

/** What the checks of colours look at. */
export interface ColourInputs {
  readonly picture: PrintPicture;
  /** Of the picture's samples. */
  readonly source: IccProfile;
  readonly condition: PrintingCondition;
  /** null where the driver converts. */
  readonly conversion: PrinterConversion | null;
  readonly job: Job;
  readonly artwork: Raster;
}

export function needsColours({ artwork, picture, condition, conversion, job }: Subject): Needs<ColourInputs> {
  if (picture === null || condition === null || job === null)
    return { skip: 'nothing is visible, so no colour is printed' };
  const source = artwork.ownColours?.profile ?? SRGB_PROFILE;
  return { inputs: { picture, source, condition, conversion, job, artwork: artwork.raster } };
}

/** What a stand-in finds about nobody's printer is advice. */
export function severityUnder({ reference }: PrintingCondition): Severity {
  return reference ? 'advice' : 'warning';
}

/** Which printer was judged, and on whose measurements. */
export function conditionFacts({ id, name, reference, attribution }: PrintingCondition) {
  return {
    condition: id,
    conditionName: name,
    reference,
    ...(attribution === null ? {} : { attribution }),
  } satisfies Record<string, Fact>;
}

/** A share for people: `12 %`, `0.4 %`, `under 0.1 %`. */
export function phraseShare(percent: number): string {
  if (percent < 0.1) return 'under 0.1 %';
  return `${Number(percent.toFixed(percent < 10 ? 1 : 0))} %`;
}

/** What a finding under this condition is worth. */
export function phraseTrust(facts: Readonly<Record<string, Fact>>): string {
  return facts.reference === true
    ? ' This was judged by a generic reference, not your printer: name the profile of your own with --condition.'
    : '';
}
