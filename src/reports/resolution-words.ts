import type { ArtworkReport } from './report.ts';

type Judged = Pick<ArtworkReport, 'effectivePpi' | 'artwork'>;

/**
 * The resolution of the coarser axis, ppi; null where there is none, and of a drawing, which is drawn as fine as it is
 * printed: what its pixels come to says nothing of it.
 */
export function findCoarserPpi({ effectivePpi, artwork }: Judged): number | null {
  if (effectivePpi === null || artwork.format === 'svg') return null;
  const ppi = Math.min(effectivePpi.x, effectivePpi.y);
  return Number.isFinite(ppi) ? ppi : null;
}

/** The same in words, rounded down so that none crosses a limit: `150 ppi`, or `vector`; null where nothing is placed. */
export function tellResolution(report: Judged): string | null {
  const ppi = findCoarserPpi(report);
  if (ppi !== null) return `${Math.floor(ppi)} ppi`;
  return report.effectivePpi !== null && report.artwork.format === 'svg' ? 'vector' : null;
}
