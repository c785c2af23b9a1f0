import { hang, type Page, paint } from './page.ts';

/** A page of docs/findings/ for a terminal: headings stand out, paragraphs are wrapped, marks of Markdown are gone. */
export function renderFindingPage(markdown: string, page: Page): string {
  const blocks = markdown.trim().split(/\n{2,}/);
  const lines = blocks.map((block) => {
    const [, level, heading] = /^(#{1,2}) (.*)$/.exec(block) ?? [];
    if (level !== undefined) return paint(plain(heading!), level === '#' ? 'strong' : 'note', page);
    return hang('  ', plain(block.replaceAll('\n', ' ')), page).join('\n');
  });
  return `${lines.join('\n\n')}\n`;
}

function plain(text: string): string {
  return text.replace(/`([^`]*)`/g, '$1').replace(/\*([^*]+)\*/g, '$1');
}
