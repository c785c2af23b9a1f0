import type { Matrix3 } from '../colour/matrix3.ts';
import type { Triple } from '../colour/triple.ts';
import type { Curve } from './curve.ts';

/**
 * A multi-dimensional table of a profile as a chain of elements on values 0…1, in the order in which they act.
 * @see ICC.1:2022, 10.10 to 10.13
 */
export interface Lut {
  readonly inputs: number;
  readonly outputs: number;
  readonly elements: readonly LutElement[];
  /** How Lab stands on 0…1 at the ends of the chain: `lut16` only in `mft2`, in version 2 and 4 alike. */
  readonly labEncoding: 'lut16' | 'full';
}

export type LutElement =
  | { readonly kind: 'curves'; readonly curves: readonly Curve[] }
  | { readonly kind: 'matrix'; readonly matrix: Matrix3; readonly offset: Triple }
  | Grid;

/** Values at the nodes of an n-dimensional grid; the first input channel varies slowest, outputs are interleaved. */
export interface Grid {
  readonly kind: 'grid';
  /** Nodes per input channel, each at least 2. */
  readonly sizes: readonly number[];
  readonly outputs: number;
  /** 0…65535 stands for 0…1. */
  readonly values: Uint16Array;
}
