import { shown } from './markup.ts';

/** Where on a page a check is explained. */
export function explanationId(check: string): string {
  return `about-${check}`;
}

/** A page of docs/findings/ as a section: its title, then what each code means and what to do. */
export function explanation(check: string, markdown: string): string {
  const [title = '', ...blocks] = markdown.trim().split(/\n{2,}/);
  const told = blocks
    // The id stands in the title already, where it is found.
    .filter((block) => block !== `\`${check}\``)
    .map((block) => {
      const code = /^## (.*)$/.exec(block)?.[1];
      return code === undefined ? `<p>${inline(block)}</p>` : `<h4>${inline(code)}</h4>`;
    });
  return `<section id="${explanationId(check)}"><h3>${inline(title.replace(/^# /, ''))} <span class="origin">${shown(check)}</span></h3>${told.join('')}</section>`;
}

function inline(text: string): string {
  return shown(text.replaceAll('\n', ' '))
    .replace(/`([^`]*)`/g, '<code>$1</code>')
    .replace(/\*([^*]+)\*/g, '<em>$1</em>');
}
