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

function tellDropped(dropped: readonly DroppedMark[], page: Page): readonly string[] {
  const crowded = dropped.filter(({ reason }) => reason === 'no-room');
  if (crowded.length === 0) return [];
  const names = crowded.map(({ mark, side, axis }) => [mark, side ?? axis].filter(Boolean).join(' '));
  return hang('  No room for ', [...new Set(names)].join(', '), page);
}
