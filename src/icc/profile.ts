import type { Matrix3 } from '../colour/matrix3.ts';
import type { Triple } from '../colour/triple.ts';
import type { Curve } from './curve.ts';
import type { Lut } from './lut.ts';

/** @see ICC.1:2022, 7.2.5; device links, abstract and named colour profiles have other uses and are refused. */
export type ProfileClass = 'input' | 'display' | 'output' | 'colour-space';

/** `other` are spaces without a meaning of their own here (CMY, HSV, 5CLR …): only their number of channels counts. */
export type DeviceSpace = 'gray' | 'rgb' | 'cmyk' | 'lab' | 'xyz' | 'other';

/** Space in which profiles meet; D50, relative to the media white. @see ICC.1:2022, 6.3 */
export type ConnectionSpace = 'xyz' | 'lab';

export type Intent = 'perceptual' | 'relative' | 'saturation' | 'absolute';

/** The intents that have tables of their own; absolute is relative with the media white put back. */
export type TableIntent = Exclude<Intent, 'absolute'>;

/** The intent whose model is used: absolute colorimetric reads the relative tables. @see ICC.1:2022, 6.2 */
export function tableIntentOf(intent: Intent): TableIntent {
  return intent === 'absolute' ? 'relative' : intent;
}

/** How one direction is described. `gray` and `matrix` are read both ways, a table only its own. */
export type ColourModel =
  | { readonly kind: 'gray'; readonly curve: Curve }
  | {
      readonly kind: 'matrix';
      readonly curves: readonly [Curve, Curve, Curve];
      /** Linear device values to XYZ. */
      readonly matrix: Matrix3;
      readonly inverse: Matrix3;
    }
  | { readonly kind: 'table'; readonly lut: Lut };

/** An ICC profile, read and checked. @see ICC.1:2022 */
export interface IccProfile {
  /** As stated: `2.4`, `4.3`. */
  readonly version: string;
  readonly majorVersion: 2 | 4;
  readonly class: ProfileClass;
  readonly space: DeviceSpace;
  /** Samples of one device colour, 1…15. */
  readonly channels: number;
  readonly connection: ConnectionSpace;
  /** As the profile names itself; empty when it does not. Never decides anything. */
  readonly description: string;
  /** Media white as XYZ, Y = 1 for a perfect diffuser; the profile's own figure, D50 when it states none. */
  readonly mediaWhiteXyz: Triple;
  /** `chad`: from the white the device was measured under to D50. null when not stated. */
  readonly adaptation: Matrix3 | null;
  /** Device to connection space; null where the profile does not describe that direction. */
  readonly toConnection: Readonly<Record<TableIntent, ColourModel>> | null;
  /** Connection space to device. */
  readonly fromConnection: Readonly<Record<TableIntent, ColourModel>> | null;
}
