import { findBlank } from '../../src/catalogue/catalogue.ts';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import type { PrintRequest } from '../../src/check-artwork.ts';
import { placeArtwork } from '../../src/check-artwork.ts';
import type { Subject } from '../../src/checks/define-check.ts';
import type { Finding, Outcome } from '../../src/checks/finding.ts';
import { CHECKS } from '../../src/checks/index.ts';
import { runChecks } from '../../src/checks/run.ts';
import { findPage } from '../../src/find-page.ts';
import type { Artwork } from '../../src/formats/artwork.ts';
import type { Raster } from '../../src/raster/raster.ts';
import { artworkOf } from '../pictures.ts';

/** A flat blank of 100 x 100 mm with sharp corners, bleed 3, safe 5, limits 300/220/150. */
export const PLATE: BlankRecord = {
  id: 'test-plate',
  name: 'Plate of the tests',
  outline: { shape: 'rect', widthMm: 100, heightMm: 100 },
  surface: 'first',
  bleedMm: 3,
  safeMm: 5,
};

export const DISC: BlankRecord = {
  ...PLATE,
  id: 'test-disc',
  outline: { shape: 'circle', widthMm: 100, heightMm: 100 },
};

export function blankOf(id: string): BlankRecord {
  const blank = findBlank(id);
  if (!blank) throw new Error(`no blank ${id} in the catalogue`);
  return blank;
}

/** What the checks look at, for a raster on a blank. */
export function subjectOf(
  raster: Raster,
  request: Partial<PrintRequest> = {},
  changes: Partial<Artwork> = {},
): Subject {
  const artwork = artworkOf(raster, changes);
  const asked = { blank: PLATE, ...request };
  const placed = placeArtwork(artwork, asked);
  return {
    artwork,
    picture: null,
    condition: null,
    conversion: null,
    page: findPage(placed.job, placed.extents, asked),
    ...placed,
  };
}

export function outcomesOf(
  raster: Raster,
  request: Partial<PrintRequest> = {},
  changes: Partial<Artwork> = {},
): Outcome[] {
  return runChecks(subjectOf(raster, request, changes), CHECKS);
}

const FOR_EVERY_PICTURE = ['transparent-margin/trimmed:advice', 'marked-preview/preview-sized:advice'];

/** `check/code:severity` of everything found, in order, without the advice that every trimmed or small picture gets. */
export function codesOf(outcomes: readonly Outcome[]): string[] {
  return outcomes
    .flatMap((outcome) =>
      outcome.status === 'found'
        ? outcome.findings.map((finding) => `${outcome.check}/${finding.code}:${finding.severity}`)
        : [],
    )
    .filter((code) => !FOR_EVERY_PICTURE.includes(code));
}

/** The findings of one check, or an error when it did not find anything. */
export function findingsOf(outcomes: readonly Outcome[], check: string): readonly Finding[] {
  const outcome = outcomes.find((candidate) => candidate.check === check);
  return outcome?.status === 'found' ? outcome.findings : [];
}
