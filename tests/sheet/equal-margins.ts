import type { PageMargins, SidesMm } from '../../src/sheet/paper.ts';

/** The same bare sides however a page is held. */
export function equalMargins(sidesMm: SidesMm): PageMargins {
  return { portrait: sidesMm, landscape: sidesMm };
}
