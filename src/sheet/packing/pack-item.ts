export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Something to pack, in whole units: the ways it may lie. Others may be better, the first is taken where they are not. */
export interface PackItem {
  readonly shapes: readonly [Size, ...Size[]];
}

/** Where an item lies on its page, from the top left of the room. */
export interface PackedItem {
  readonly item: number;
  readonly shape: number;
  readonly x: number;
  readonly y: number;
}

export type PackedPage = readonly PackedItem[];

/** Where some item of a kind lies, by the place of the kind in its stock. */
export interface PackedKind {
  readonly kind: number;
  readonly shape: number;
  readonly x: number;
  readonly y: number;
}

/** A page of kinds: any items of them make it, the first first. */
export type KindsPage = readonly PackedKind[];
