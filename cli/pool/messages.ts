import type { ErrorCode } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { JudgedArtwork, JudgedPlace } from '../commands/judge-artwork.ts';
import type { Origin, PlannedArtwork } from '../inputs/planned-artwork.ts';
import type { KnownFolders } from '../output/out-folders.ts';

/** What a child is told first: the same words that this process was started with, which it reads by itself. */
export interface SetUp {
  readonly kind: 'set-up';
  readonly command: 'prepare' | 'check';
  readonly options: TypedOptions;
  readonly cwd: string;
  /** Of all artworks of the run: none of them may be replaced. */
  readonly origins: readonly Origin[];
  /** What options name and only this process could read, by path. */
  readonly givenOnce: ReadonlyMap<string, Uint8Array>;
  /** That the run began with. */
  readonly folders: KnownFolders;
}

export interface JudgeThis {
  readonly kind: 'judge';
  readonly artwork: PlannedArtwork;
  readonly place: JudgedPlace;
}

export type ToChild = SetUp | JudgeThis | { readonly kind: 'stop' };

/** What became of one artwork. */
export type Answer =
  | { readonly kind: 'judged'; readonly judged: JudgedArtwork | null }
  /** The request cannot be met, for this artwork or for any. */
  | { readonly kind: 'refused'; readonly code: ErrorCode; readonly message: string }
  | { readonly kind: 'interrupted' }
  | { readonly kind: 'fault'; readonly name: string; readonly message: string };

export type FromChild =
  | { readonly kind: 'ready' }
  | { readonly kind: 'answer'; readonly answer: Answer; readonly residentBytes: number };
