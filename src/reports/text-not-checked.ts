import { hang, type Page, paint } from './page.ts';
import type { ArtworkReport } from './report.ts';
import { showHidden } from './visible-text.ts';

/** So many artworks are named that one reason kept from a check; of more, the first and how many. */
const MOST_NAMED = 3;

interface Gap {
  readonly checks: string[];
  readonly reason: string;
  readonly paths: readonly string[];
}

/**
 * What was not checked in a run and why, once for all artworks of which the same holds, what holds for the most first. Also
 * for those that are ready, whose reports are left out where there are many. Lines with a newline at the end; empty where
 * all was checked.
 */
export function renderNotChecked(results: readonly ArtworkReport[], page: Page): string {
  const judged = results.filter(({ outcomes }) => outcomes.length > 0);
  const all = judged.length === results.length ? 'all of them' : 'all that could be read';
  const lines = findGaps(judged).flatMap(({ checks, reason, paths }) => {
    const which = paths.length === judged.length ? all : nameSome(paths);
    return hang('  [?] ', showHidden(`${checks.join(', ')}: ${reason} (${which})`), page);
  });
  return lines.length === 0 ? '' : `${[paint('Not checked', 'strong', page), ...lines].join('\n')}\n`;
}

/** Checks that were skipped for one reason in the very same artworks, together. */
function findGaps(results: readonly ArtworkReport[]): readonly Gap[] {
  const skipped = new Map<string, { check: string; reason: string; paths: string[] }>();
  for (const { artwork, outcomes } of results)
    for (const outcome of outcomes) {
      if (outcome.status !== 'skipped') continue;
      const { check, reason } = outcome;
      const key = `${check}\0${reason}`;
      const before = skipped.get(key);
      if (before) before.paths.push(artwork.path);
      else skipped.set(key, { check, reason, paths: [artwork.path] });
    }
  const gaps = new Map<string, Gap>();
  for (const { check, reason, paths } of skipped.values()) {
    const key = [reason, ...paths].join('\0');
    const before = gaps.get(key);
    if (before) before.checks.push(check);
    else gaps.set(key, { checks: [check], reason, paths });
  }
  return [...gaps.values()].sort((a, b) => b.paths.length - a.paths.length);
}

function nameSome(paths: readonly string[]): string {
  return paths.length > MOST_NAMED ? `${paths.length} of them, the first ${paths[0]}` : paths.join(', ');
}
