import type { PackedItem, PackedPage, PackItem, Size } from './pack-item.ts';

/** More blocks than this take longer to build than they save paper (own choice, measured on cut sheets). */
const MOST_BLOCKS = 6000;

/** Lengths count as one where they differ by less than about this part of the room: sizes in fine units were rounded. */
const SAME = 1e-5;

/** Items laid edge to edge without a gap. */
interface Block extends Size {
  /** One bit for each item. */
  readonly members: bigint;
  readonly parts: readonly PackedItem[];
}

/**
 * A page that is filled to its last by items with edges of one length, joined two by two; null where none is found.
 * What was cut from whole sheets fits together so; other sets seldom do, and then little is built.
 */
export function findSeamlessPage(
  items: readonly PackItem[],
  left: readonly number[],
  room: Size,
): PackedPage | null {
  if (left.length >= MOST_BLOCKS) return null;
  const blocks = left.flatMap((item) =>
    items[item]!.shapes.map(
      (size, shape): Block => ({
        width: size.width,
        height: size.height,
        members: 1n << BigInt(item),
        parts: [{ item, shape, x: 0, y: 0 }],
      }),
    ),
  );
  const across = classesOf(room.width);
  const down = classesOf(room.height);
  const fills = ({ width, height }: Size) =>
    across(width) === across(room.width) && down(height) === down(room.height);
  const byWidth = new Map<number, Block[]>();
  const byHeight = new Map<number, Block[]>();
  const known = new Set<string>();
  for (let next = 0; next < blocks.length && blocks.length < MOST_BLOCKS; next += 1) {
    const block = blocks[next]!;
    if (fills(block)) return block.parts;
    const joined = [
      ...(byWidth.get(across(block.width)) ?? []).map((other) => join(block, other, 'down')),
      ...(byHeight.get(down(block.height)) ?? []).map((other) => join(block, other, 'across')),
    ];
    for (const one of joined) {
      if (one === null || one.width > room.width || one.height > room.height) continue;
      const key = `${one.members}:${one.width}`;
      if (known.has(key)) continue;
      known.add(key);
      if (fills(one)) return one.parts;
      blocks.push(one);
    }
    addTo(byWidth, across(block.width), block);
    addTo(byHeight, down(block.height), block);
  }
  return null;
}

/** A number that lengths which count as one share; a length of whole pixels has its own. */
function classesOf(room: number): (length: number) => number {
  const same = Math.max(1, room * SAME);
  return (length) => Math.round(length / same);
}

function addTo(blocks: Map<number, Block[]>, key: number, block: Block): void {
  const known = blocks.get(key);
  if (known) known.push(block);
  else blocks.set(key, [block]);
}

function join(one: Block, other: Block, way: 'down' | 'across'): Block | null {
  if ((one.members & other.members) !== 0n) return null;
  const [dx, dy] = way === 'down' ? [0, one.height] : [one.width, 0];
  return {
    width: dx === 0 ? Math.max(one.width, other.width) : one.width + other.width,
    height: dy === 0 ? Math.max(one.height, other.height) : one.height + other.height,
    members: one.members | other.members,
    parts: [...one.parts, ...other.parts.map((part) => ({ ...part, x: part.x + dx, y: part.y + dy }))],
  };
}
