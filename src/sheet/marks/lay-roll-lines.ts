import { findItemBounds } from '../../geometry/drawing-bounds.ts';
import type { MarkPage } from './mark-page.ts';
import type { MarkRequest } from './mark-request.ts';

/** Line by line: those of a piece that find no room are named once. They may lie within the box of their own arc, and of others beside it. */
export function layRollLines(page: MarkPage, { pieces }: MarkRequest): void {
  pieces.forEach(({ roll }, piece) => {
    if (!roll) return;
    const lines = roll.lines.map((item) => ({ side: 'top' as const, item, boxMm: findItemBounds(item)! }));
    const free = lines.filter((line) => page.isFreeBut(line, piece));
    for (const line of free) page.show({ mark: 'roll-lines', piece }, line);
    if (free.length < lines.length) page.drop({ mark: 'roll-lines', piece });
  });
}
