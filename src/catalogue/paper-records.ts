import type { Confidence, Source, Span } from './records.ts';

/** A cut sheet, portrait. */
export interface SheetRecord {
  readonly id: string;
  readonly name: string;
  /** Other words for it, in small letters. */
  readonly aliases?: readonly string[];
  /** Self-describing media name; left out where none is registered. @see PWG 5101.1 */
  readonly pwgName?: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** Sold in about this size. */
  readonly approximate?: true;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

export interface RollRecord {
  readonly id: string;
  readonly name: string;
  readonly widthIn: number;
  readonly widthMm: number;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

/** Edges that a kind of printer cannot print on: the least and the most met. */
export interface MarginRecord {
  readonly id: string;
  readonly name: string;
  /** Use this one when the printer is unknown. */
  readonly default?: true;
  readonly sidesMm: Span;
  readonly leadMm: Span;
  readonly trailMm: Span;
  readonly trailSomeModesMm?: Span;
  readonly enlargementPercent?: Span;
  readonly notes?: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}

/** How paper and printers stray from the nominal; each record fills the fields it is about. */
export interface PaperBehaviourRecord {
  readonly id: string;
  readonly name: string;
  readonly leftRightDifferenceMm?: number;
  readonly leadTrailDifferenceMm?: Span;
  readonly steps?: readonly (
    | { readonly upToMm: number; readonly plusMinusMm: number }
    | { readonly aboveMm: number; readonly plusMinusMm: number }
  )[];
  readonly growthPercent?: Span;
  readonly weightGPerM2?: Span;
  readonly notes?: string;
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}
