import { posix } from 'node:path';
import type { PlannedArtwork } from './planned-artwork.ts';

/** Of formats that say the same, the first: drawings, then what loses nothing, then what holds alpha, then the rest. */
const ORDER = ['svg', 'svgz', 'png', 'tif', 'tiff', 'webp', 'avif', 'gif', 'jpg', 'jpeg'];

/**
 * The entries of one archive, those with the same folder and stem as one artwork that stands for all of them; it has the
 * place of the first. Which of them it will be is known only once they are read. What is refused stands by itself.
 */
export function groupFormats(entries: readonly PlannedArtwork[]): readonly PlannedArtwork[] {
  const groups = new Map<string, PlannedArtwork[]>();
  for (const [index, entry] of entries.entries()) {
    const key = canStandFor(entry) ? `${posix.dirname(entry.path)}/${entry.stem}` : `alone\0${index}`;
    groups.set(key, [...(groups.get(key) ?? []), entry]);
  }
  return [...groups.values()].map((group) => {
    const formats = [...group].sort(inStatedOrder);
    return formats.length === 1 ? formats[0]! : { ...formats[0]!, formats };
  });
}

/** A damaged entry may be one of several formats; a dangerous one is always told. */
function canStandFor({ origin }: PlannedArtwork): boolean {
  return origin.kind === 'entry' || (origin.kind === 'fault' && origin.error.code === 'archive-damaged');
}

function inStatedOrder(a: PlannedArtwork, b: PlannedArtwork): number {
  const readable = Number(a.origin.kind === 'fault') - Number(b.origin.kind === 'fault');
  return readable || rankOf(a) - rankOf(b) || (a.path < b.path ? -1 : 1);
}

function rankOf({ extension }: PlannedArtwork): number {
  const rank = ORDER.indexOf(extension.toLowerCase());
  return rank < 0 ? ORDER.length : rank;
}
