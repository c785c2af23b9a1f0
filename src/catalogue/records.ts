/** Mark of a source: a standard, a* standard recalled, b common practice, c recalled, d derived (seeds/README.md). */
export interface Source {
  readonly mark: 'a' | 'a*' | 'b' | 'c' | 'd';
  readonly covers?: string;
  readonly text: string;
}

export type Confidence = 'high' | 'medium' | 'low';

/** The outline of a flat blank or of its printable area, nominal, in mm. */
export interface OutlineRecord {
  readonly shape: 'rect' | 'rounded-rect' | 'circle' | 'ellipse' | 'stadium' | 'polygon';
  readonly widthMm: number;
  readonly heightMm: number;
  readonly cornerRadiusMm?: number;
  readonly pointsMm?: readonly (readonly [number, number])[];
  /** `irregular`: the true edge varies from piece to piece. */
  readonly edge?: 'irregular';
}

/** Middle of the hole from the top left of the outline box, seen from the printed face. */
export type HoleRecord =
  | {
      readonly use: string;
      readonly shape: 'circle';
      readonly xMm: number;
      readonly yMm: number;
      readonly diameterMm: number;
    }
  | {
      readonly use: string;
      readonly shape: 'slot';
      readonly xMm: number;
      readonly yMm: number;
      readonly widthMm: number;
      readonly heightMm: number;
    };

/** A round body; diameters are of the body where it is printed. */
export interface WrapRecord {
  readonly topDiameterMm: number;
  readonly bottomDiameterMm: number;
  readonly bodyHeightMm: number;
  readonly printHeightMm: number;
  readonly wayRound: 'whole' | 'part';
  readonly overlapMm?: number;
  readonly handleGapMm?: number;
  readonly printWidthMm?: number;
  readonly clearTopMm: number;
  readonly clearBaseMm: number;
  readonly widestPrintMm?: number;
  readonly highestPrintMm?: number;
}

export interface BlankRecord {
  readonly id: string;
  readonly name: string;
  readonly family?: string;
  /** Flat blanks have an outline, round ones a wrap. */
  readonly outline?: OutlineRecord;
  readonly wrap?: WrapRecord;
  /** Given only where it is smaller than the outline; centred in it. */
  readonly printable?: OutlineRecord;
  readonly holes?: readonly HoleRecord[];
  readonly surface: 'first' | 'second';
  readonly sides?: 1 | 2;
  readonly bleedMm?: number;
  readonly safeMm?: number;
  /** How far in from the outline the face falls away; left out: flat to the edge, as far as is known. */
  readonly bevelMm?: number;
  readonly thicknessMm?: number;
  /** Left out when its family's counts. */
  readonly smallestStrokeMm?: SmallestStroke;
  readonly recipe?: string;
  /** Pixels per inch of the print-ready file, where the blank asks for other than 300. */
  readonly ppi?: number;
  /** sRGB of the bare coated face; left out when white. Dye adds to it: there is no white dye. */
  readonly baseColour?: string;
  /** Left out when its family's counts. */
  readonly protectiveFilm?: ProtectiveFilm;
  readonly note?: string;
  readonly tier?: 'core' | 'extended';
  readonly confidence?: Confidence;
  readonly sources?: readonly Source[];
}

export type ProtectiveFilm = 'usual' | 'sometimes';

/** Thinnest line that survives the press, mm: dark on white, and white on dark. */
export interface SmallestStroke {
  readonly positive: number;
  readonly reversed: number;
}

export interface ResolutionLimits {
  readonly good: number;
  readonly acceptable: number;
  readonly stopBelow: number;
}

export interface Span {
  readonly min: number;
  readonly max: number;
}

/** How far pieces differ from the nominal, plus or minus; flat families give a size, round ones diameter and height. */
export interface Tolerance {
  readonly sizePlusMinusMm?: Span;
  readonly diameterPlusMinusMm?: Span;
  readonly circumferencePlusMinusMm?: Span;
  readonly heightPlusMinusMm?: Span;
  readonly heatShrinkPercent?: Span;
}

export interface FamilyRecord {
  readonly id: string;
  readonly name: string;
  /** Its limits count for blanks that name no family. */
  readonly default?: true;
  readonly tolerance: Tolerance;
  readonly toleranceNote?: string;
  readonly nominalNameErrorPercentMax?: number;
  readonly placementPlusMinusMm: number;
  readonly bleedMm: number;
  readonly safeMm: number;
  readonly resolutionPpi: ResolutionLimits;
  readonly viewDistanceIn: number;
  readonly viewDistanceMm: number;
  readonly smallestStrokeMm?: SmallestStroke;
  readonly protectiveFilm?: ProtectiveFilm;
  /** What stands where the art is white; left out when that is white. */
  readonly baseNote?: string;
  /** The usual one first. */
  readonly recipes: readonly string[];
  readonly sources: readonly Source[];
  readonly confidence: Confidence;
}
