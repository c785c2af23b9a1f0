import type { DrawnItem } from '../../geometry/drawing.ts';
import { growBox, type RectMm } from '../../geometry/rectangle.ts';
import { type Cost, FreeRoom } from './free-room.ts';
import { drawBlock, type MarkBlock } from './mark-block.ts';
import { MARK_KINDS } from './mark-kinds.ts';
import type { DroppedMark, MarkName, MarkRequest, ShownMark } from './mark-request.ts';
import { BLEED_GAP_MM, MARK_GAP_MM } from './mark-style.ts';
import { isClearOf, type PieceLine } from './piece-lines.ts';

/** The page while its marks are laid: what is taken, what is shown and what found no room. */
export class MarkPage {
  readonly #request: MarkRequest;
  readonly #bleeds: readonly RectMm[];
  readonly #items: DrawnItem[] = [];
  readonly #shown: ShownMark[] = [];
  readonly #dropped: DroppedMark[] = [];
  readonly #room: FreeRoom;
  /** Less the places of marks that cannot stand elsewhere: others keep out of them as long as they find room. */
  readonly #courteousRoom: FreeRoom;

  constructor(request: MarkRequest) {
    this.#request = request;
    this.#bleeds = request.pieces.map(({ bleedMm }) => bleedMm);
    this.#room = new FreeRoom(request.printableMm);
    this.#courteousRoom = new FreeRoom(request.printableMm);
    for (const bleed of this.#bleeds) this.#take(growBox(bleed, BLEED_GAP_MM));
  }

  /** Keeps a place for a line that comes later. */
  reserve({ boxMm }: PieceLine): void {
    this.#courteousRoom.take(growBox(boxMm, MARK_GAP_MM));
  }

  /** Whether a box lies within the printable part, this far from every bleed and clear of every mark. */
  isFree(box: RectMm, bleedGapMm: number): boolean {
    return (
      contains(this.#request.printableMm, box) &&
      this.#bleeds.every((bleed) => !areNearer(bleed, box, bleedGapMm)) &&
      this.#shown.every(({ boxMm }) => !areNearer(boxMm, box, MARK_GAP_MM / 2))
    );
  }

  /**
   * Whether a line of a piece lies within the printable part, clear of the bleeds of other pieces: of their boxes, or of
   * arcs that lie in each other's hollows, and then of their lines too.
   */
  isFreeBut({ item, boxMm }: PieceLine, piece: number): boolean {
    const { pieces, printableMm } = this.#request;
    return (
      contains(printableMm, boxMm) &&
      pieces.every(({ bleedMm, arcMm }, other) => {
        if (other === piece || !areNearer(bleedMm, boxMm, BLEED_GAP_MM)) return true;
        return arcMm !== undefined && item.kind === 'line' && isClearOf(arcMm, item, BLEED_GAP_MM);
      }) &&
      (pieces[piece]!.arcMm === undefined ||
        this.#shown.every((mark) => mark.piece === piece || !areNearer(mark.boxMm, boxMm, MARK_GAP_MM / 2)))
    );
  }

  /** Shows a line that has its place. */
  show(name: MarkName, { item, boxMm }: PieceLine): void {
    this.#items.push(item);
    this.#shown.push({ ...name, boxMm });
    this.#take(growBox(boxMm, MARK_GAP_MM));
  }

  drop(name: MarkName): void {
    this.#dropped.push({ ...name, reason: 'no-room' });
  }

  /** Shows the first variant that finds room, at its cheapest place; else it is dropped. */
  place(name: MarkName, variants: Iterable<MarkBlock>, cost: Cost, more: Partial<ShownMark> = {}): void {
    for (const room of [this.#courteousRoom, this.#room])
      for (const block of variants) {
        const boxMm = room.findPlace(block.widthMm, block.heightMm, cost);
        if (!boxMm) continue;
        this.#items.push(...drawBlock(block, boxMm));
        const { lengthMm } = block;
        this.#shown.push({ ...name, ...more, boxMm, ...(lengthMm !== undefined && { lengthMm }) });
        this.#take(growBox(boxMm, MARK_GAP_MM));
        return;
      }
    this.drop(name);
  }

  /** Everything so far; marks that are not wanted are named as such. */
  finish(): { items: readonly DrawnItem[]; shown: readonly ShownMark[]; dropped: readonly DroppedMark[] } {
    const off = (this.#request.without ?? []).map((mark): DroppedMark => ({ mark, reason: 'off' }));
    const rank = ({ mark }: MarkName) => MARK_KINDS.indexOf(mark);
    return {
      items: this.#items,
      shown: this.#shown,
      dropped: [...this.#dropped, ...off].sort((one, other) => rank(one) - rank(other)),
    };
  }

  #take(box: RectMm): void {
    this.#room.take(box);
    this.#courteousRoom.take(box);
  }
}

/** What adding up may lose. */
const ROUNDING_MM = 1e-9;

function contains(outer: RectMm, inner: RectMm): boolean {
  return (
    inner.x >= outer.x - ROUNDING_MM &&
    inner.y >= outer.y - ROUNDING_MM &&
    inner.x + inner.width <= outer.x + outer.width + ROUNDING_MM &&
    inner.y + inner.height <= outer.y + outer.height + ROUNDING_MM
  );
}

/** Whether both gaps between two boxes, across and down, are below this. */
function areNearer(one: RectMm, other: RectMm, gapMm: number): boolean {
  return (
    one.x - gapMm < other.x + other.width - ROUNDING_MM &&
    other.x < one.x + one.width + gapMm - ROUNDING_MM &&
    one.y - gapMm < other.y + other.height - ROUNDING_MM &&
    other.y < one.y + one.height + gapMm - ROUNDING_MM
  );
}
