import { formatSize } from '../../geometry/length.ts';
import { tellResolution } from '../resolution-words.ts';
import { findWorst } from '../worst-finding.ts';
import { shown, shownName } from './markup.ts';
import type { PagePiece } from './piece-article.ts';
import { thumbnail } from './piece-figures.ts';
import { verdictBadge, verdictOf } from './verdict-badge.ts';

/** All artworks of a page at a glance, each a link to what is told of it. */
export function contactSheet(pieces: readonly { readonly piece: PagePiece; readonly id: string }[]): string {
  const items = pieces.map(({ piece: { report, view }, id }) => {
    const { placementMm, artwork } = report;
    const size = placementMm ? formatSize(placementMm.width, placementMm.height) : '';
    const facts = [size, tellResolution(report) ?? '', findWorst(report) ?? '']
      .filter((fact) => fact !== '')
      .map((fact) => `<span>${shown(fact)}</span>`);
    return `<li class="${verdictOf(report)}"><a href="#${id}">${thumbnail(view, id)}<span class="name">${shownName(artwork.path)}</span></a>${verdictBadge(report)}<p class="facts">${facts.join(' ')}</p></li>`;
  });
  return `<section class="contact" aria-labelledby="contact-name"><h2 id="contact-name">Contact sheet</h2><p>What needs attention stands first.</p><ul>${items.join('\n')}</ul></section>`;
}
