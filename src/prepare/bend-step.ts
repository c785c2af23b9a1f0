import { formatSize, MM_PER_INCH } from '../geometry/length.ts';
import { middleOf } from '../geometry/rectangle.ts';
import { apexOf, boxAround, middleRadiusOf, type Sector } from '../geometry/sector.ts';
import type { Job } from '../job/job.ts';
import { paperBoxesOf } from '../job/paper.ts';
import type { Bend } from '../raster/bend.ts';
import { checkPixels } from './canvas.ts';
import type { Step } from './step.ts';

type BendStep = Extract<Step, { step: 'bend' }>;

/** How the strip of a job is bent into the flat paper of its body; null where that is a rectangle. @throws BlankcheckError `print-too-large` */
export function bendStepOf({ blank, ppi }: Pick<Job, 'blank' | 'ppi'>): {
  readonly step: BendStep;
  readonly sizeMm: { readonly widthMm: number; readonly heightMm: number };
} | null {
  const sector = blank.wrap?.development.sector;
  if (!sector) return null;
  const { width: widthMm, height: heightMm } = paperBoxesOf(blank).bleedMm;
  const toPx = (mm: number) => Math.max(1, Math.round((mm / MM_PER_INCH) * ppi));
  const [widthPx, heightPx] = [toPx(widthMm), toPx(heightMm)];
  checkPixels(widthPx, heightPx, `${formatSize(widthMm, heightMm)} at ${ppi} pixels per inch`);
  const { outerRadiusMm, innerRadiusMm, angleRad, opens } = sector;
  return {
    step: {
      step: 'bend',
      outerRadiusMm,
      innerRadiusMm,
      angleDeg: (angleRad * 180) / Math.PI,
      opens,
      bleedMm: blank.bleed.value,
      ppi,
      widthPx,
      heightPx,
    },
    sizeMm: { widthMm, heightMm },
  };
}

/** The same in pixels of the bent picture, whose middle is that of the box of the paper and its bleed. */
export function bendOf({
  outerRadiusMm,
  innerRadiusMm,
  angleDeg,
  bleedMm,
  ppi,
  widthPx,
  heightPx,
  opens,
}: BendStep): Bend {
  const sector: Sector = { outerRadiusMm, innerRadiusMm, angleRad: (angleDeg * Math.PI) / 180, opens };
  const [apex, middle] = [apexOf(sector), middleOf(boxAround(sector, bleedMm))];
  const perMm = ppi / MM_PER_INCH;
  return {
    widthPx,
    heightPx,
    apexPx: { x: widthPx / 2 + (apex.x - middle.x) * perMm, y: heightPx / 2 + (apex.y - middle.y) * perMm },
    middleRadiusPx: middleRadiusOf(sector) * perMm,
    opens,
  };
}
