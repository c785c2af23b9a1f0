import type { CheckDefinition } from '../../src/checks/define-check.ts';
import { CHECKS } from '../../src/checks/index.ts';
import { CASE_LISTS } from './case-lists.ts';
import type { Plant } from './fault-case.ts';
import type { Judgement } from './judgements.ts';

/** What one picture gave: every code found, as `check/code`. */
export interface Seen {
  readonly name: string;
  readonly planted: Plant | null;
  readonly found: readonly string[];
  /** Checks that had nothing to judge in it: it is no silence of theirs. */
  readonly unasked: readonly string[];
  /** Those of them that were errors or warnings. */
  readonly loud: readonly string[];
}

export interface RealRate {
  readonly check: string;
  readonly code: string;
  readonly severities: readonly string[];
  readonly alarms: number;
  /** Of the alarms, those where this fault was planted: they are true without judgement. */
  readonly plantedFound: number;
  readonly right: number;
  readonly wrong: number;
  readonly notJudged: number;
  /** Of the alarms, those that were errors or warnings, and of these the false ones. */
  readonly loud: number;
  readonly loudWrong: number;
  readonly plantedMissed: number;
  readonly silent: number;
  readonly silencesJudged: number;
  readonly silencesMissed: number;
}

export interface RealRun {
  readonly pictures: number;
  readonly packages: readonly string[];
  readonly planted: number;
  readonly rates: readonly RealRate[];
}

/** The checks that have rates. */
export const RATED: readonly CheckDefinition[] = CHECKS.filter(({ id }) => id in CASE_LISTS);

/** The rates of every code of the checks that have them. */
export function countReal(
  seen: readonly Seen[],
  judgements: readonly Judgement[],
  packages: readonly string[],
): RealRun {
  const rates = RATED.flatMap(({ id, codes }) =>
    Object.entries(codes).map(([code, severities]) => countCode(id, code, severities, seen, judgements)),
  );
  return { pictures: seen.length, packages, planted: seen.filter(({ planted }) => planted).length, rates };
}

function countCode(
  check: string,
  code: string,
  severities: readonly string[],
  seen: readonly Seen[],
  judgements: readonly Judgement[],
): RealRate {
  const isPlanted = ({ planted }: Seen) => planted?.check === check && planted.codes.includes(code);
  const alarms = seen.filter(({ found }) => found.includes(`${check}/${code}`));
  const silent = seen.filter(
    ({ found, unasked }) => !found.includes(`${check}/${code}`) && !unasked.includes(check),
  );
  const count = (list: readonly Seen[], wanted: Judgement['judgement']) =>
    list.filter((one) => judged(one)?.judgement === wanted).length;
  const judged = (one: Seen) =>
    judgements.find((j) => j.picture === one.name && j.check === check && j.code === code);
  const byEye = alarms.filter((one) => !isPlanted(one));
  const plantedFound = alarms.length - byEye.length;
  const loud = alarms.filter((one) => one.loud.includes(`${check}/${code}`));
  const right = count(byEye, 'true');
  const wrong = count(byEye, 'false');
  return {
    check,
    code,
    severities,
    alarms: alarms.length,
    plantedFound,
    right: right + plantedFound,
    wrong,
    notJudged: byEye.length - right - wrong,
    loud: loud.length,
    loudWrong: count(loud, 'false'),
    plantedMissed: silent.filter((one) => isPlanted(one) && isOnlyAnswer(one, check)).length,
    silent: silent.length,
    silencesJudged: count(silent, 'rightly-silent') + count(silent, 'missed'),
    silencesMissed: count(silent, 'missed'),
  };
}

/** None of the codes that would have answered to the plant was found. */
function isOnlyAnswer({ planted, found }: Seen, check: string): boolean {
  return planted !== null && !planted.codes.some((code) => found.includes(`${check}/${code}`));
}
