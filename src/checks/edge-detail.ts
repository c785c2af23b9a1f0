import { formatLength, formatSize } from '../geometry/length.ts';
import type { Job } from '../job/job.ts';
import type { Raster } from '../raster/raster.ts';
import { type CheckResult, defineCheck, type PrintPicture } from './define-check.ts';
import { readEdge } from './edge-profile.ts';
import type { Finding } from './finding.ts';
import { phrasePlace, placeOnBlank } from './picture-place.ts';
import { findStandingDetail, STRONG } from './standing-detail.ts';
import { findUnsafeDetail, type UnsafeDetail } from './unsafe-detail.ts';
import { findRemedy } from './unsafe-detail-remedy.ts';
import type { UnsafeZone } from './unsafe-zones.ts';

/** Share of the edge that may be bare: a white gleam there is no end of the art (own choice). */
const MOST_OPEN = 0.05;

interface Inputs {
  readonly job: Job;
  readonly picture: PrintPicture;
  readonly artwork: Raster;
}

export default defineCheck<Inputs>({
  id: 'edge-detail',
  title: 'Lettering and features near the edge, a hole or a bevel',
  reason:
    'Art that bleeds may end anywhere, but lettering and faces in it may not: within the safe line a misplacement cuts them or sets them askew, a hole takes them away, and on a bevel the press reaches badly.',
  source: [
    'safe inset, holes and bevel of the blank (seeds/blanks.json), the keep-out of seeds/practice.json (common practice, no source)',
    `detail: ${STRONG} L* within 1 mm, a quarter of the range, with edges in several directions (own choice; L* of CIE 15; matrix of edges by Harris and Stephens, 1988)`,
    'what is busy all over, runs off the print or repeats as a pattern is none (own choice)',
  ],
  // Advice: it knows no faces from leaves. Of 12 alarms on real art 2 were false, and of 36 silences 8 missed something,
  // mostly large plain shapes and cut letters (tests/rates). It does not see detail that differs in hue only.
  codes: { 'near-edge': ['advice'], 'on-bevel': ['advice'], 'at-hole': ['advice'] },
  needs: ({ job, picture, artwork }) => {
    if (job === null || picture === null) return { skip: 'nothing is visible, so there is no detail' };
    if (picture.raster.model === 'cmyk') return { skip: 'detail in art of inks is not judged' };
    if (job.copiesMm.length > 0) return { skip: 'detail in art that is repeated round a body is not judged' };
    const edge = readEdge(job, artwork.raster);
    if (edge.filter(({ reachMm }) => reachMm === null).length > MOST_OPEN * edge.length)
      return {
        skip: 'the art does not run over the edge all round: safe-area and thin-border say what ends near it',
      };
    return { inputs: { job, picture, artwork: artwork.raster } };
  },
  run: judge,
  phrases: {
    'near-edge': (finding) =>
      phrase(finding, 'the edge', 'a transfer placed a little off cuts it, or sets it askew'),
    'on-bevel': (finding) =>
      phrase(
        finding,
        'the outline, on the bevel',
        'the press reaches there badly, and it shows from the side',
      ),
    'at-hole': (finding) =>
      phrase(finding, `the ${finding.facts.use} hole`, 'it is lost, or hidden by what goes through'),
  },
});

function judge({ job, picture, artwork }: Inputs): CheckResult {
  const standing = findStandingDetail(picture, job.blank);
  const unsafe = findUnsafeDetail(standing, job.blank);
  if (unsafe.length === 0) return { findings: [] };
  const remedy = findRemedy(job, artwork, standing);
  const zones = new Set(unsafe.map(({ zone }) => zone));
  const inZone = (wanted: UnsafeZone) => unsafe.filter(({ zone }) => zone === wanted);
  return { findings: [...zones].map((zone) => describe(job, artwork, inZone(zone), remedy)) };
}

/** One finding for a zone: of its details that which has most in it stands for all. */
function describe(
  job: Job,
  artwork: Raster,
  details: readonly UnsafeDetail[],
  remedy: Finding['facts'],
): Finding {
  const [worst] = details.toSorted((a, b) => b.cellsWithin - a.cellsWithin);
  const { zone, boxMm } = worst!;
  return {
    code: zone.code,
    severity: 'advice',
    actual: {
      value: details.reduce((least, { clearanceMm }) => Math.min(least, clearanceMm), Infinity),
      unit: 'mm',
    },
    expected: { min: zone.limit.value, unit: 'mm', from: zone.limit.from },
    place: placeOnBlank(boxMm, job, artwork),
    facts: {
      count: details.length,
      widthMm: boxMm.width,
      heightMm: boxMm.height,
      ...(zone.use === null ? {} : { use: zone.use }),
      ...remedy,
    },
  };
}

function phrase({ actual, expected, facts, place }: Finding, what: string, effect: string): string {
  const size = formatSize(Number(facts.widthMm), Number(facts.heightMm));
  const pieces = facts.count === 1 ? 'in one piece' : `in ${facts.count} pieces, the largest`;
  const where =
    actual!.value === 0 ? `reaches over ${what}` : `comes to ${formatLength(actual!.value)} from ${what}`;
  return `Strong detail, as lettering and faces have, ${pieces} of ${size} about ${phrasePlace(place)}, ${where}, expected at least ${formatLength(expected!.min!)}: ${effect}. It may be leaves: look whether it matters. ${phraseRemedy(facts)}`;
}

function phraseRemedy(facts: Finding['facts']): string {
  const ways: string[] = [];
  if (typeof facts.widthToClearMm === 'number')
    ways.push(
      `print the art ${facts.smallerPercent} % smaller, at most ${formatLength(facts.widthToClearMm)} wide`,
    );
  if (typeof facts.offsetXMm === 'number' && typeof facts.offsetYMm === 'number')
    ways.push(`move it with --offset ${facts.offsetXMm}mm,${facts.offsetYMm}mm`);
  if (ways.length === 0)
    return 'No smaller size and no offset would clear it and still bleed: give the art more ground there, or print all of it within the safe line with --fit inside.';
  const sentence = [...ways, 'print all of it within the safe line with --fit inside'].join(', or ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}
