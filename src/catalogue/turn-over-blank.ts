import type { BlankRecord, OutlineRecord } from './records.ts';

/**
 * The same blank seen from its other side: outline, printable area and holes reversed left to right. Points of a
 * polygon are counted the other way round, so that they go round as before. Wraps have no other side and stay.
 */
export function turnOverBlank(blank: BlankRecord): BlankRecord {
  const { outline, printable, holes } = blank;
  if (!outline) return blank;
  return {
    ...blank,
    outline: turnOver(outline),
    ...(printable && { printable: turnOver(printable) }),
    ...(holes && { holes: holes.map((hole) => ({ ...hole, xMm: outline.widthMm - hole.xMm })) }),
  };
}

function turnOver(outline: OutlineRecord): OutlineRecord {
  const { pointsMm, widthMm } = outline;
  if (!pointsMm) return outline;
  return { ...outline, pointsMm: pointsMm.map(([x, y]) => [widthMm - x, y] as const).reverse() };
}
