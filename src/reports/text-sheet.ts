import { formatSize } from '../geometry/length.ts';
import type { DroppedMark } from '../sheet/marks/mark-request.ts';
import { hang, type Page } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { showHidden } from './visible-text.ts';

/** The whole page and the marks that found no room on it; nothing where the file is the piece alone. */
export function tellSheet({ sheet }: ArtworkReport, page: Page): readonly string[] {
  if (!sheet) return [];
  const { paper, orientation, sizeMm, marks } = sheet;
  const held = orientation === 'portrait' ? 'upright' : 'lying';
  const size = formatSize(sizeMm.width, sizeMm.height);
  return [
    ...hang('  Sheet       ', showHidden(`${paper}, ${held}, ${size}`), page),
    ...tellDropped(marks.dropped, page),
  ];
}

/** By kind, with the sides or axes once each: a page of many pieces may lack a hundred ticks. */
function tellDropped(dropped: readonly DroppedMark[], page: Page): readonly string[] {
  const missing = new Map<string, Set<string>>();
  for (const { mark, side, axis, reason } of dropped) {
    if (reason !== 'no-room') continue;
    const parts = missing.get(mark) ?? new Set<string>();
    missing.set(mark, parts);
    const part = side ?? axis;
    if (part !== undefined) parts.add(part);
  }
  if (missing.size === 0) return [];
  const names = [...missing].map(([mark, parts]) =>
    parts.size === 0 ? mark : `${mark} (${[...parts].join(', ')})`,
  );
  return hang('  No room for ', names.join(', '), page);
}
