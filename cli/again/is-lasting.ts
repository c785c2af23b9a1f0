import type { ArtworkReport } from '../../src/index.ts';

/** Would it come out the same again? What could not be read or written may, next time; a fault of ours is not kept. */
export function isLasting(report: ArtworkReport): boolean {
  const { artwork, status, error, proofError, outcomes } = report;
  return (
    artwork.sha256 !== null &&
    status !== 'unreadable' &&
    error === null &&
    proofError === null &&
    !(report.picture && 'error' in report.picture) &&
    outcomes.every((outcome) => outcome.status !== 'broken') &&
    survivesJson(report)
  );
}

/** Numbers without end, which JSON cannot hold, would be read back as something else. */
function survivesJson(report: ArtworkReport): boolean {
  let survives = true;
  JSON.stringify(report, (_, value: unknown) => {
    if (typeof value === 'number' && !Number.isFinite(value)) survives = false;
    return value;
  });
  return survives;
}
