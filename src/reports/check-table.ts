import type { CheckDefinition } from '../checks/define-check.ts';
import { CHECKS } from '../checks/index.ts';

const HEAD = ['Check', 'Codes', 'What goes wrong', 'Source'] as const;

/** The checks as a table in GitHub Flavored Markdown (its spec, 4.10), in their order, with a newline at its end. */
export function renderCheckTable(checks: readonly CheckDefinition[] = CHECKS): string {
  const rows = checks.map((check) => [
    `\`${check.id}\`<br>${cell(check.title)}`,
    Object.entries(check.codes)
      .map(([code, severities]) => `\`${code}\` (${severities.join(' or ')})`)
      .join('<br>'),
    cell(check.reason),
    check.source.map(cell).join('<br>'),
  ]);
  return [HEAD, HEAD.map(() => '---'), ...rows].map((cells) => `| ${cells.join(' | ')} |\n`).join('');
}

/** A cell is one line; a bar would end it and an angle bracket would begin HTML. */
export function cell(text: string): string {
  return text.replace(/\s+/g, ' ').trim().replace(/[|<]/g, '\\$&');
}
