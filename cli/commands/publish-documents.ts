import {
  type BlankcheckError,
  conditionFor,
  pageHead,
  RUN_CSV_HEAD,
  renderReportPage,
  renderRunCsv,
} from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import { readFindingPage } from '../inputs/read-finding-page.ts';
import { publishDocument } from '../output/publish-document.ts';
import type { JudgedRun } from './judge-all.ts';
import type { JudgeOptions } from './judge-artwork.ts';

/** The table and the page of a run; why those could not be written that were not. */
export async function publishDocuments(
  { results, viewed, passedOver }: JudgedRun,
  { csv, report }: TypedOptions,
  judging: JudgeOptions,
): Promise<readonly BlankcheckError[]> {
  const unmade: (BlankcheckError | null)[] = [];
  if (typeof csv === 'string') {
    const table = { path: csv, option: '--csv', head: RUN_CSV_HEAD, text: renderRunCsv(results) } as const;
    unmade.push(await publishDocument(table, judging));
  }
  if (report !== undefined) {
    const { name } = await conditionFor(judging.request);
    const explanations = await readExplanations(results);
    const text = renderReportPage(viewed, { passedOver, conditionName: name, explanations });
    const page = { path: report, option: '--report', head: pageHead('report'), text } as const;
    unmade.push(await publishDocument(page, judging));
  }
  return unmade.filter((error) => error !== null);
}

/** Of the checks that found something, by their ids. */
async function readExplanations(results: JudgedRun['results']): Promise<ReadonlyMap<string, string>> {
  const found = results.flatMap(({ outcomes }) => outcomes.filter(({ status }) => status === 'found'));
  const ids = [...new Set(found.map(({ check }) => check))];
  return new Map(await Promise.all(ids.map(async (id) => [id, await readFindingPage(id)] as const)));
}
