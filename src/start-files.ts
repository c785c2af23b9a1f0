import type { PicturedArtwork, PrintRequest } from './check-artwork.ts';
import { type ComposedPrint, composeArtwork, composeUnconverted } from './compose-artwork.ts';
import { composePage } from './compose-page.ts';
import type { PrintingCondition } from './conditions/printing-condition.ts';
import type { CostInputs } from './costing/cost-inputs.ts';
import type { Artwork } from './formats/artwork.ts';
import { type Limits, limitsWith } from './formats/limits.ts';
import { composePdf, composePdfPiece } from './lay-out-pdf.ts';
import { encodePrintReady } from './prepare-artwork.ts';
import type { PrintReadyFormat } from './print-ready-format.ts';
import { type Proof, type ProofRequest, proofArtwork } from './proof-artwork.ts';
import { bareRaster } from './raster/bare.ts';
import { measureInkCoverage } from './raster/ink-coverage.ts';
import type { PagePlan } from './sheet/page-plan.ts';

/** Which files are asked for of an artwork, whatever the checks will say. */
export interface FilesToStart {
  readonly write: boolean;
  readonly format?: PrintReadyFormat;
  readonly proof?: ProofRequest;
  /** Whether the cover of ink is to be measured. */
  readonly cost?: CostInputs;
  readonly limits?: Partial<Limits>;
  readonly signal?: AbortSignal;
}

export interface StartedFiles {
  /** Of the print-ready picture, where a cost is asked for. */
  readonly coverage: number | null;
  /** The encoder works in a thread of its own while the checks run; where they say stop its work is thrown away. */
  readonly early: Promise<Uint8Array> | null;
  readonly drawProof: (() => Promise<Proof>) | null;
}

/** In a function of its own, so that the composed picture lives no longer than who asks for it. */
export async function startFiles(
  artwork: Artwork,
  pictured: PicturedArtwork,
  page: PagePlan | null,
  { condition, conversion, dummy }: PrintRequest & { readonly condition: PrintingCondition },
  options: FilesToStart,
): Promise<StartedFiles> {
  const { write, proof, signal, limits, cost } = options;
  const made = write || cost ? await composeArtwork(artwork, pictured, { signal, conversion }) : null;
  const full = made && dummy ? { ...made, raster: bareRaster(made.raster) } : made;
  const coverage = full && cost ? measureInkCoverage(full.raster) : null;
  const printed = write ? full : null;
  signal?.throwIfAborted();
  // A proof shows what is printed: of a file in sRGB that very file, else the art's own colours, which go to the printer.
  const isBent = pictured.blank.wrap?.development.kind === 'sector';
  const seen = proof
    ? ((conversion || isBent || dummy ? null : printed) ??
      (await composeUnconverted(artwork, pictured, signal)))
    : null;
  signal?.throwIfAborted();
  const compose = (print: ComposedPrint): ComposedPrint | Promise<ComposedPrint> => {
    if (options.format === 'pdf')
      return page
        ? composePdf(print, [{ page, pictureOf: () => print.raster }], pictured.job?.driverMirrors === true)
        : composePdfPiece(print, pictured.blank);
    return page ? composePage(print, page, { limits: limitsWith(limits), signal }) : print;
  };
  const file = printed && (await compose(printed));
  return {
    coverage,
    early: file && encodePrintReady(artwork, pictured, file, { ...options, conversion }),
    drawProof:
      proof && seen
        ? () =>
            proofArtwork(artwork, pictured.blank, seen, condition, { ...proof, ...(signal && { signal }) })
        : null,
  };
}
