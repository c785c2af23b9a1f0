import {
  BlankcheckError,
  type JudgedPiece,
  judgePiece,
  type Limits,
  type PrintRequest,
  readPrintRecord,
  reportUnreadable,
  type SheetOrder,
} from '../../src/index.ts';
import { namesBeside, type ReadFormat, readBestFormat, tellInsteadOf } from '../inputs/choose-format.ts';
import type { PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { ArtworkReader } from '../inputs/read-artworks.ts';
import type { RunListener } from './judge-all.ts';

/** One side of what is to be printed, before its art is read. */
export interface PlannedSide {
  readonly artwork: PlannedArtwork;
  readonly request: PrintRequest;
  /** Files of our own are passed over where nobody named them. */
  readonly skipOwn: boolean;
}

export interface PlannedOrder extends Omit<SheetOrder, 'sides'> {
  readonly sides: readonly PlannedSide[];
}

export interface JudgeOrdersOptions {
  readonly anyway: boolean;
  readonly signal: AbortSignal;
  readonly limits: Partial<Limits>;
  readonly reader: ArtworkReader;
}

export interface JudgedOrders {
  readonly orders: readonly SheetOrder[];
  /** The art of them, in their order, those that could be read first. */
  readonly artworks: readonly PlannedArtwork[];
  /** Files of our own. */
  readonly passedOver: readonly PlannedArtwork[];
  readonly faults: number;
}

/**
 * Reads and judges the art of every order, each once. Ends early, without an error, when the signal says so.
 * @throws BlankcheckError of kind `usage` for a request that cannot be met.
 */
export async function judgeOrders(
  planned: readonly PlannedOrder[],
  options: JudgeOrdersOptions,
  listener: RunListener,
): Promise<JudgedOrders> {
  const orders: SheetOrder[] = [];
  const artworks: [PlannedArtwork[], PlannedArtwork[]] = [[], []];
  const passedOver: PlannedArtwork[] = [];
  let faults = 0;
  for (const { sides, ...order } of planned) {
    const judged: JudgedPiece[] = [];
    for (const side of sides) {
      if (options.signal.aborted) break;
      try {
        const piece = await judgeSide(side, options);
        if (piece === null) passedOver.push(side.artwork);
        else {
          judged.push(piece);
          artworks[piece.report.status === 'unreadable' ? 1 : 0].push(side.artwork);
          listener.report(piece.report);
        }
      } catch (error) {
        if (options.signal.aborted) break;
        if (error instanceof BlankcheckError && error.kind === 'usage') throw error;
        faults += 1;
        listener.fault(side.artwork.path, error);
      }
    }
    if (judged.length === sides.length) orders.push({ ...order, sides: judged });
  }
  return { orders, artworks: artworks.flat(), passedOver, faults };
}

/** null for a file of our own to pass over. */
async function judgeSide(
  { artwork, request, skipOwn }: PlannedSide,
  { reader, anyway, signal, limits }: JudgeOrdersOptions,
): Promise<JudgedPiece | null> {
  let read: ReadFormat;
  try {
    read = await readBestFormat(artwork, reader, { limits, signal });
  } catch (error) {
    if (!(error instanceof BlankcheckError)) throw error;
    const report = reportUnreadable({ path: artwork.path, bytes: null }, error, request);
    return { report: tellInsteadOf(report, namesBeside(artwork, artwork.formats)), printed: null };
  }
  if (skipOwn && read.bytes.look(readPrintRecord)) return null;
  const source = { path: read.artwork.path, bytes: read.bytes.take(), standIn: read.standIn };
  const judged = await judgePiece(source, request, { anyway, signal, limits });
  return { ...judged, report: tellInsteadOf(judged.report, read.insteadOf, read.unreadableBeside) };
}
