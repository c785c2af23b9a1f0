/** Edges that a printer leaves bare, in mm, of a sheet as it is fed: portrait, `lead` is the edge that goes in first. */
export interface PrinterMargins {
  readonly left: number;
  readonly right: number;
  readonly lead: number;
  readonly trail: number;
}

/**
 * A maker's own printer, as a file of theirs describes it. What is left out is unknown: margins then are those of an
 * unknown printer, the correction is 1, the driver does not mirror.
 */
export interface PrinterRecord {
  readonly name: string;
  /** Id of the sheet (seeds/papers.json), or a size such as `200x300mm`. */
  readonly paper: string;
  readonly marginsMm?: PrinterMargins;
  /** Pixels per inch that its driver wants. */
  readonly ppi?: number;
  /** Intended length / printed length, along the way of the head (`scan`) and of the paper (`feed`). */
  readonly scaleCorrection?: { readonly scan: number; readonly feed: number };
  /** An ICC file of this printer, paper and ink; from the folder of the record. */
  readonly profile?: string;
  /** The driver mirrors whatever it is given. */
  readonly driverMirrors?: boolean;
  readonly note?: string;
}
