import type { MendDefinition } from '../mends/define-mend.ts';
import { MENDS } from '../mends/index.ts';
import { cell } from './check-table.ts';

const HEAD = ['Mend', 'Answers to', 'What it does', 'Source'] as const;

/** The mends as a table in GitHub Flavored Markdown (its spec, 4.10), in their order, with a newline at its end. */
export function renderMendTable(mends: readonly MendDefinition[] = MENDS): string {
  const rows = mends.map(({ id, title, answers, gentle, reason, source }) => [
    `\`${id}\`${gentle ? ' (gentle)' : ''}<br>${cell(title)}`,
    answers.map((answer) => `\`${answer}\``).join('<br>'),
    cell(reason),
    source.map(cell).join('<br>'),
  ]);
  return [HEAD, HEAD.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |\n`).join('');
}
