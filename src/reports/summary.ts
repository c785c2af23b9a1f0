import type { ArtworkReport, Status, Summary } from './report.ts';

/** Counts the verdicts of a run; `passedOver` are the files that were never artworks (0 or more). */
export function summarise(results: readonly Pick<ArtworkReport, 'status'>[], passedOver: number): Summary {
  const count = (status: Status) => results.filter((result) => result.status === status).length;
  return {
    artworks: results.length,
    ready: count('ready'),
    look: count('look'),
    stop: count('stop'),
    unreadable: count('unreadable'),
    passedOver,
  };
}
