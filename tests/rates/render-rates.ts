import type { ConstructedRate } from './count-constructed.ts';
import type { RealRate, RealRun } from './count-real.ts';

const ALLOWED =
  'Allowed: one missed fault in ten on made pictures; one false alarm in twenty on real pictures for errors and warnings.';

/** The table of the made pictures. */
export function renderConstructed(rates: readonly ConstructedRate[]): string {
  const rows = rates.map(({ check, code, severities, faults, clean, missed, falselyFound }) => [
    check,
    code,
    severities.join(', '),
    `${faults}`,
    `${missed.length}`,
    `${clean}`,
    `${falselyFound.length}`,
  ]);
  const wrong = rates.flatMap(({ check, code, missed, falselyFound }) => [
    ...missed.map((name) => `- ${check}/${code} missed: ${name}`),
    ...falselyFound.map((name) => `- ${check}/${code} falsely found: ${name}`),
  ]);
  return `${[
    '# Rates on made pictures',
    '',
    'Made by `npm run rates`.',
    ALLOWED,
    '',
    ...table(['check', 'code', 'severity', 'with the fault', 'missed', 'clean', 'falsely found'], rows),
    ...(wrong.length > 0 ? ['', 'What came out wrong:', '', ...wrong] : []),
  ].join('\n')}\n`;
}

/** The table of the real pictures. */
export function renderReal({ pictures, packages, planted, rates }: RealRun): string {
  return `${[
    '# Rates on real pictures',
    '',
    'Made by `npm run rates`, by the judgements in `judgements.json`; an alarm that nobody judged counts as neither.',
    ALLOWED,
    '',
    `${pictures} pictures, a fault planted in ${planted} of them.`,
    '',
    ...packages.map((line) => `- ${line}`),
    '',
    ...table(
      [
        'check',
        'code',
        'severity',
        'alarms',
        'planted',
        'true',
        'false',
        'not judged',
        'errors and warnings',
        'false of these',
        'planted missed',
        'silent',
        'silences looked at',
        'missed there',
      ],
      rates.map(rowOf),
    ),
  ].join('\n')}\n`;
}

function rowOf(rate: RealRate): string[] {
  const {
    check,
    code,
    severities,
    alarms,
    plantedFound,
    right,
    wrong,
    notJudged,
    loud,
    loudWrong,
    plantedMissed,
    silent,
    silencesJudged,
    silencesMissed,
  } = rate;
  const counts = [
    alarms,
    plantedFound,
    right,
    wrong,
    notJudged,
    loud,
    loudWrong,
    plantedMissed,
    silent,
    silencesJudged,
    silencesMissed,
  ];
  return [check, code, severities.join(', '), ...counts.map(String)];
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string[] {
  return [head, head.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |`);
}
