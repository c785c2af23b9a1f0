import type { Outcome } from '../checks/finding.ts';
import type { PieceCost } from '../costing/cost-of-piece.ts';
import type { ArtworkFormat, StatedPpi } from '../formats/artwork.ts';
import type { Development } from '../geometry/development.ts';
import type { RectMm, RectPx } from '../geometry/rectangle.ts';
import type { Intent } from '../icc/profile.ts';
import type { Step } from '../prepare/step.ts';
import type { PagePlan } from '../sheet/page-plan.ts';
import type { LeftOut, SheetReport } from './sheets-report.ts';

/** ready: nothing to say or advice only; look: warnings; stop: errors. */
export type Status = 'ready' | 'look' | 'stop' | 'unreadable';

/** Everything that is known of one artwork on one blank, as data; reports make words of it. */
export interface ArtworkReport {
  readonly artwork: {
    readonly path: string;
    /** null when no byte could be read. */
    readonly sha256: string | null;
    /** null when it could not be told. */
    readonly format: ArtworkFormat | null;
    /** As displayed; null when unreadable. */
    readonly widthPx: number | null;
    readonly heightPx: number | null;
    readonly statedPpi: StatedPpi | null;
    /** Names of the other formats of it in the same ZIP, which were passed over for it; left out where there are none. */
    readonly insteadOf?: readonly string[];
    /** Those among them that were found to be unreadable; left out where none was. */
    readonly unreadableBeside?: readonly string[];
  };
  readonly status: Status;
  /** Why the artwork is unreadable, or why its file was not written. */
  readonly error: { readonly code: string; readonly message: string } | null;
  readonly contentBoxPx: RectPx | null;
  /** `printable` is given where it is smaller than the outline. */
  readonly blank: {
    readonly id: string;
    readonly widthMm: number;
    readonly heightMm: number;
    readonly surface: 'first' | 'second';
    readonly printable?: { readonly widthMm: number; readonly heightMm: number };
  };
  /** The printer that the run was told of; left out where it was told of none. */
  readonly printer?: {
    readonly name: string;
    readonly driverMirrors: boolean;
    /** Intended / printed length. Drawn into whole sheets only: the file of a piece keeps its size. */
    readonly scaleCorrection: { readonly scan: number; readonly feed: number };
  };
  /** Who brings the colours to the printer's, which must be done once; left out for unreadable artworks. */
  readonly colours?:
    | { readonly convertedBy: 'driver'; readonly tagged: 'sRGB' }
    | {
        readonly convertedBy: 'file';
        /** The printer's profile, as it describes itself. */
        readonly tagged: string;
        readonly profileSha256: string;
        readonly space: 'rgb' | 'cmyk';
        readonly intent: Intent;
        readonly blackPointCompensation: boolean;
        /** The art came in the colours of this very printer, and was not converted. */
        readonly unchanged?: true;
      };
  readonly placementMm: RectMm | null;
  /** How far to the right of it the art is repeated, going round a body; left out where it is not. */
  readonly copiesMm?: readonly number[];
  /** The flat paper of a round blank; left out for flat ones. */
  readonly development?: DevelopmentReport;
  /** The part of the placement that puts dye down, without white at its rim; null when nothing does. */
  readonly inkedMm: RectMm | null;
  /** True where the outline is printed in place of the art. */
  readonly dummy?: boolean;
  readonly effectivePpi: { readonly x: number; readonly y: number } | null;
  readonly outcomes: readonly Outcome[];
  /** What was changed in the art before it was judged, on request only; mends that found nothing to do are left out. */
  readonly mends: readonly MendReport[];
  readonly plan: readonly Step[];
  /** The whole page, where one was asked for and takes the piece. */
  readonly sheet?: PagePlan;
  /** What a good piece costs; left out where that was not asked for, or nothing can be printed. */
  readonly cost?: PieceCost;
  /** null when nothing was written. */
  readonly output: PrintReadyOutput | null;
  /** null when none was written. */
  readonly proof: ProofOutput | null;
  /** Why a proof that was asked for was not written, where something stood in its way. */
  readonly proofError: { readonly code: string; readonly message: string } | null;
  /** The annotated picture; left out where none was asked for. */
  readonly picture?: PictureOutput | { readonly error: { readonly code: string; readonly message: string } };
}

/** An annotated picture that was written. */
export interface PictureOutput {
  readonly path: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** The flat paper of a round blank. Radii are null for a rectangle. */
export type DevelopmentReport = Pick<
  Development,
  | 'kind'
  | 'outerRadiusMm'
  | 'innerRadiusMm'
  | 'angleDeg'
  | 'sagittaMm'
  | 'rectangleErrorMm'
  | 'widthMm'
  | 'heightMm'
>;

/** What one mend changed. */
export interface MendReport {
  readonly mend: string;
  /** Changed area at the print size. */
  readonly areaMm2: number;
  /** Changed pixels of the artwork. */
  readonly pixels: number;
  /** Largest change of a printed pixel, over white. */
  readonly largestDeltaE00: number;
  /** Largest change of alpha, 0…255 at any depth. */
  readonly largestAlpha: number;
  /** What was found before and is not found any more, as `<check>/<code>`. */
  readonly mended: readonly string[];
  /** How far at most invented art goes on beyond what was there, outside the edge; only of mends that invent any. */
  readonly inventedMm?: number;
}

export interface PrintReadyOutput {
  readonly path: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly ppi: number;
  readonly mirrored: boolean;
}

/** A proof that was written: a picture to look at, never to print. */
export interface ProofOutput {
  readonly path: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly ppi: number;
  /** True when what is out of gamut is painted over. */
  readonly marked: boolean;
}

export interface Summary {
  readonly artworks: number;
  readonly ready: number;
  readonly look: number;
  readonly stop: number;
  readonly unreadable: number;
  /** Files and ZIP entries in folders that are no artwork, and the program's own print-ready files. */
  readonly passedOver: number;
}

/** The report of a run: the document of `--json`. */
export interface RunReport {
  readonly schemaVersion: 1;
  readonly program: { readonly name: 'blankcheck'; readonly version: string };
  readonly summary: Summary;
  readonly results: readonly ArtworkReport[];
  /** Of `sheet`: the pages that the pieces lie on together, what is on none, and what could not be kept together. */
  readonly sheets?: readonly SheetReport[];
  readonly leftOut?: readonly LeftOut[];
  readonly apart?: readonly string[];
}
