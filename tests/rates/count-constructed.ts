import { judgeChecks, pictureArtwork } from '../../src/check-artwork.ts';
import type { CheckDefinition } from '../../src/checks/define-check.ts';
import { CHECKS } from '../../src/checks/index.ts';
import { PLATE } from '../checks/jobs.ts';
import { artworkOf } from '../pictures.ts';
import type { FaultCase } from './fault-case.ts';

export interface ConstructedRate {
  readonly check: string;
  readonly code: string;
  readonly severities: readonly string[];
  readonly faults: number;
  readonly clean: number;
  /** Names of the cases that came out wrong. */
  readonly missed: readonly string[];
  readonly falselyFound: readonly string[];
}

/** What a check says of its made pictures, one row for each of its codes that have cases. */
export async function countConstructed(
  check: string,
  cases: readonly FaultCase[],
): Promise<ConstructedRate[]> {
  const definition = CHECKS.find(({ id }) => id === check)!;
  const { codes } = definition;
  const rates: ConstructedRate[] = [];
  for (const code of Object.keys(codes)) {
    const missed: string[] = [];
    const falselyFound: string[] = [];
    const own = cases.filter((one) => one.code === code);
    for (const one of own) {
      const found = await findsCode(definition, one);
      if (one.fault && !found) missed.push(one.name);
      if (!one.fault && found) falselyFound.push(one.name);
    }
    const faults = own.filter(({ fault }) => fault).length;
    if (own.length > 0)
      rates.push({
        check,
        code,
        severities: codes[code]!,
        faults,
        clean: own.length - faults,
        missed,
        falselyFound,
      });
  }
  return rates;
}

/** Whether the check finds the case's code in it. */
export async function findsCode(
  check: CheckDefinition,
  { name, code, raster, widthMm, blank = PLATE }: FaultCase,
): Promise<boolean> {
  const artwork = artworkOf(await raster());
  const request = { blank, widthMm };
  const pictured = await pictureArtwork(artwork, request);
  const outcome = (await judgeChecks(artwork, pictured, request, [check]))[0]!;
  if (outcome.status === 'broken') throw new Error(`${check.id} broke on "${name}": ${outcome.error}`);
  return outcome.status === 'found' && outcome.findings.some((finding) => finding.code === code);
}
