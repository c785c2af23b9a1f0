import type { Style } from './page.ts';
import type { ArtworkReport, Status } from './report.ts';

/** The verdict in words; its colour only repeats it. */
export const VERDICT_WORDS = {
  ready: 'READY TO PRINT',
  look: 'LOOK FIRST',
  stop: 'STOP',
  unreadable: 'CANNOT READ',
} as const satisfies Record<Status, string>;

export const VERDICT_STYLES = {
  ready: 'ready',
  look: 'look',
  stop: 'stop',
  unreadable: 'stop',
} as const satisfies Record<Status, Style>;

/** How much there is to do about it: `1 thing to mend, 2 to look at`; empty where there is nothing. */
export function tellWork(report: Pick<ArtworkReport, 'outcomes'>): string {
  const findings = report.outcomes.flatMap((outcome) => (outcome.status === 'found' ? outcome.findings : []));
  const count = (severity: string) => findings.filter((finding) => finding.severity === severity).length;
  const broken = report.outcomes.filter((outcome) => outcome.status === 'broken').length;
  const work = [
    [count('error'), 'to mend'],
    [count('warning'), 'to look at'],
    [broken, 'not checked by our fault'],
  ] as const;
  return work
    .filter(([things]) => things > 0)
    .map(
      ([things, what], index) =>
        `${things}${index === 0 ? (things === 1 ? ' thing' : ' things') : ''} ${what}`,
    )
    .join(', ');
}
