import type { PressCard } from '../catalogue/press-card.ts';
import type { OwnSettings } from '../ledger/best-settings.ts';
import { roomOf } from './piece-card.ts';
import type { ArtworkReport } from './report.ts';
import { roundNumbers } from './round-numbers.ts';
import { escapeJsonText } from './visible-text.ts';

/** The press card as a JSON document, with a newline at its end; `piece` stands in it where art was named. */
export function toPressCardJson(
  card: PressCard,
  own: OwnSettings | null,
  report: ArtworkReport | null,
): string {
  const document = { schemaVersion: 1, ...card, own, ...(report && { piece: pieceOf(report) }) };
  return `${escapeJsonText(JSON.stringify(document, null, 2))}\n`;
}

function pieceOf(report: ArtworkReport): object {
  const { artwork, status, blank, placementMm } = report;
  return roundNumbers({
    artwork: { path: artwork.path, sha256: artwork.sha256 },
    status,
    blank: { widthMm: blank.widthMm, heightMm: blank.heightMm },
    placementMm,
    roomMm: roomOf(report),
  });
}
