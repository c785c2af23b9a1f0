/** A box of an ISO base media file; `data` is a view of its contents, without size and type. */
export interface IsoBox {
  readonly type: string;
  readonly data: Uint8Array;
}

/** A row of boxes: those that are whole, and the type of the one that was cut off or is no box at all. */
export interface IsoBoxes {
  readonly boxes: readonly IsoBox[];
  readonly brokenType: string | null;
}

/** A row of pictures' boxes has a few dozen; each costs an object. */
const MOST_BOXES = 10_000;

/**
 * The boxes that stand in `bytes` one after another. Never throws.
 * @see ISO/IEC 14496-12, 4.2: 32-bit size and type; size 1: 64-bit size follows; size 0: up to the end
 */
export function readIsoBoxes(bytes: Uint8Array): IsoBoxes {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const boxes: IsoBox[] = [];
  let at = 0;
  while (at < bytes.length) {
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (at + 8 > bytes.length) return { boxes, brokenType: type };
    const short = view.getUint32(at);
    if (short === 1 && at + 16 > bytes.length) return { boxes, brokenType: type };
    const head = short === 1 ? 16 : 8;
    const size = short === 0 ? bytes.length - at : short === 1 ? Number(view.getBigUint64(at + 8)) : short;
    if (size < head || at + size > bytes.length || boxes.length >= MOST_BOXES)
      return { boxes, brokenType: type };
    boxes.push({ type, data: bytes.subarray(at + head, at + size) });
    at += size;
  }
  return { boxes, brokenType: null };
}

/** Every box at the end of this path of types; `meta` and others that begin with version and flags are known. */
export function findIsoBoxes(boxes: readonly IsoBox[], path: readonly string[]): IsoBox[] {
  const [type, ...rest] = path;
  const found = boxes.filter((box) => box.type === type);
  if (rest.length === 0) return found;
  return found.flatMap((box) =>
    findIsoBoxes(readIsoBoxes(box.type === 'meta' ? box.data.subarray(4) : box.data).boxes, rest),
  );
}
