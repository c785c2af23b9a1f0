import { practiceLimit } from '../catalogue/practice.ts';
import type { StatedPpi } from '../formats/artwork.ts';
import { formatSize, MM_PER_INCH } from '../geometry/length.ts';
import { turnSize } from '../job/art-frame.ts';
import type { Job } from '../job/job.ts';
import { defineCheck } from './define-check.ts';

const TOLERANCE = practiceLimit('stated-density');

export default defineCheck<{ readonly job: Job; readonly stated: StatedPpi | null }>({
  id: 'stated-density',
  title: 'Density that the file states',
  reason:
    "A program that trusts the file's own density prints the art at another size than the one planned here.",
  source: [
    'PNG pHYs (ISO/IEC 15948, 11.3.5.3)',
    'JFIF density (ITU-T T.871)',
    'XResolution, YResolution, ResolutionUnit (TIFF 6.0; CIPA DC-008)',
  ],
  codes: { disagrees: ['advice'] },
  needs: ({ job, artwork }) =>
    job === null
      ? { skip: 'nothing is visible, so there is no print size' }
      : { inputs: { job, stated: artwork.statedPpi } },
  run: ({ job, stated }) => {
    if (stated === null) return { findings: [], facts: { stated: false } };
    const { contentBoxPx, effectivePpi, turn } = job;
    const turned = turnSize({ width: stated.x, height: stated.y }, turn);
    const size = turnSize(contentBoxPx, turn);
    const differs = (ours: number, theirs: number) => Math.abs(theirs / ours - 1) * 100;
    const percent = Math.max(differs(effectivePpi.x, turned.width), differs(effectivePpi.y, turned.height));
    if (percent <= TOLERANCE.value + 1e-9) return { findings: [], facts: { stated: true } };
    return {
      findings: [
        {
          code: 'disagrees',
          severity: 'advice',
          actual: { value: percent, unit: 'percent' },
          expected: { max: TOLERANCE.value, unit: 'percent', from: TOLERANCE.from },
          facts: {
            statedPpiX: stated.x,
            statedPpiY: stated.y,
            statedWidthMm: (size.width / turned.width) * MM_PER_INCH,
            statedHeightMm: (size.height / turned.height) * MM_PER_INCH,
            widthMm: job.placementMm.width,
            heightMm: job.placementMm.height,
          },
        },
      ],
    };
  },
  phrases: {
    disagrees: ({ facts }) =>
      `The file states ${density(Number(facts.statedPpiX), Number(facts.statedPpiY))}, which would print the visible part ${formatSize(Number(facts.statedWidthMm), Number(facts.statedHeightMm))}; planned is ${formatSize(Number(facts.widthMm), Number(facts.heightMm))}. Print the print-ready file, not the art itself.`,
  },
});

function density(x: number, y: number): string {
  const rounded = [x, y].map((value) => String(Math.round(value * 10) / 10));
  return rounded[0] === rounded[1] ? `${rounded[0]} ppi` : `${rounded[0]} x ${rounded[1]} ppi`;
}
