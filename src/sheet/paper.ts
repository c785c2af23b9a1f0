/** What a page is made of. */
export interface Paper {
  /** An id of the seeds, or the words of a size: what a report calls it. */
  readonly id: string;
  /** Of a sheet held upright; of a roll, across it. */
  readonly widthMm: number;
  /** null for a roll: as long as is needed. */
  readonly heightMm: number | null;
}

/** What stays bare along each side of a page, as it is looked at. */
export interface SidesMm {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export type Orientation = 'portrait' | 'landscape';

/** Unprintable margins of a page by how it is held: a landscape page is turned on its way into the printer. */
export type PageMargins = Readonly<Record<Orientation, SidesMm>>;

export interface SizeMm {
  readonly width: number;
  readonly height: number;
}
