import { crc32 } from 'node:zlib';

/** A small generator with a seed, so that every mutation can be made again (Park and Miller, 1988). */
function createChance(seed: number): (below: number) => number {
  let state = (seed % 2147483646) + 1;
  return (below) => {
    state = (state * 48271) % 2147483647;
    return state % below;
  };
}

type Chance = ReturnType<typeof createChance>;
type Mutation = (bytes: Uint8Array, chance: Chance) => Uint8Array;

/** Sizes that lie: nothing, one, around the ends of the signed and unsigned ranges. */
const LIES = [0, 1, 0x7f, 0xff, 0x7fff, 0xffff, 0x7fffffff, 0x80000000, 0xfffffffe, 0xffffffff];

const MUTATIONS: readonly Mutation[] = [
  function truncate(bytes, chance) {
    return bytes.slice(0, chance(bytes.length + 1));
  },
  function flipBits(bytes, chance) {
    // Not slice, which of a Buffer is the same bytes.
    const changed = Buffer.from(bytes);
    for (let left = 1 + chance(8); left > 0; left -= 1) changed[chance(changed.length)]! ^= 1 << chance(8);
    return changed;
  },
  function splice(bytes, chance) {
    const [from, to] = [chance(bytes.length), chance(bytes.length)];
    return Buffer.concat([
      bytes.subarray(0, to),
      bytes.subarray(from, from + chance(200)),
      bytes.subarray(to),
    ]);
  },
  function swapPieces(bytes, chance) {
    const [a, b, c] = [chance(bytes.length), chance(bytes.length), chance(bytes.length)].sort(
      (x, y) => x - y,
    ) as [number, number, number];
    return Buffer.concat([
      bytes.subarray(0, a),
      bytes.subarray(b, c),
      bytes.subarray(a, b),
      bytes.subarray(c),
    ]);
  },
  function lieOfSize(bytes, chance) {
    const changed = Buffer.from(bytes);
    if (changed.length < 4) return changed;
    const at = chance(Math.min(changed.length - 3, 400));
    const lie = LIES[chance(LIES.length)]!;
    if (chance(2) === 0) changed.writeUInt32BE(lie, at);
    else changed.writeUInt32LE(lie, at);
    return changed;
  },
];

/** The bytes with one to three mutations, by the seed. Never empty input: there is nothing to mutate in it. */
export function mutate(bytes: Uint8Array, seed: number): Uint8Array {
  const chance = createChance(seed);
  let mutated = bytes;
  for (let left = 1 + chance(3); left > 0 && mutated.length > 0; left -= 1)
    mutated = MUTATIONS[chance(MUTATIONS.length)]!(mutated, chance);
  return mutated;
}

const SIGNATURE_BYTES = 8;
/** Length, type and CRC of a chunk. */
const FRAME_BYTES = 12;

/**
 * A PNG whose chunks were mutated one by one, swapped or left out, each with its own length and a CRC that holds: what lies
 * behind the checks of a reader is reached so. @see ISO/IEC 15948, 5.3
 */
export function mutatePng(png: Uint8Array, seed: number): Uint8Array {
  const chance = createChance(seed);
  const chunks = chunksOf(png);
  const at = chance(chunks.length);
  const chosen = chunks[at]!;
  switch (chance(4)) {
    case 0:
      chunks.splice(at, 1);
      break;
    case 1:
      chunks.splice(chance(chunks.length), 0, chosen);
      break;
    default:
      if (chosen.data.length > 0) chunks[at] = { ...chosen, data: mutate(chosen.data, seed) };
  }
  return Buffer.concat([png.subarray(0, SIGNATURE_BYTES), ...chunks.map(frame)]);
}

interface Chunk {
  readonly type: Uint8Array;
  readonly data: Uint8Array;
}

function chunksOf(png: Uint8Array): Chunk[] {
  const chunks: Chunk[] = [];
  const view = Buffer.from(png);
  for (let at = SIGNATURE_BYTES; at < png.length; at += FRAME_BYTES + view.readUInt32BE(at))
    chunks.push({
      type: png.subarray(at + 4, at + 8),
      data: png.subarray(at + 8, at + 8 + view.readUInt32BE(at)),
    });
  return chunks;
}

function frame({ type, data }: Chunk): Uint8Array {
  const typed = Buffer.concat([type, data]);
  const framed = Buffer.alloc(FRAME_BYTES + data.length);
  framed.writeUInt32BE(data.length);
  typed.copy(framed, 4);
  framed.writeUInt32BE(crc32(typed), 8 + data.length);
  return framed;
}
