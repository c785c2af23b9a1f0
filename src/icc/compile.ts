import { multiplyMatrices } from '../colour/matrix3.ts';
import { compileExactly } from './convert-exactly.ts';
import { compileGrid } from './convert-grid.ts';
import { compileMatrixTransform } from './convert-matrix.ts';
import { compileOneChannel } from './convert-one-channel.ts';
import { planGrid } from './grid-plan.ts';
import type { PixelTransform } from './pixel-transform.ts';
import type { ColourModel } from './profile.ts';
import { runStages, type Stage } from './stage.ts';

export interface TransformParts {
  readonly source: ColourModel;
  readonly target: ColourModel;
  readonly inputs: number;
  readonly outputs: number;
  /** All of the conversion, from device values to device values. */
  readonly stages: readonly Stage[];
  /** True when XYZ passes from source to target as it is. */
  readonly isDirect: boolean;
}

/**
 * The conversion made fast. One channel, and matrix to matrix: rounded as exact arithmetic rounds. Three and four
 * channels to at most four: through a grid, which is exact at its nodes. Anything else: exact, and slow.
 */
export function compileTransform({
  source,
  target,
  inputs,
  outputs,
  stages,
  isDirect,
}: TransformParts): PixelTransform {
  if (source.kind === 'matrix' && target.kind === 'matrix' && isDirect)
    return compileMatrixTransform(
      source.curves,
      multiplyMatrices(target.inverse, source.matrix),
      target.curves,
    );
  if (inputs === 1) return compileOneChannel((value) => runStages(stages, [value], outputs), outputs);
  if ((inputs === 3 || inputs === 4) && outputs <= 4)
    return compileGrid(planGrid(source, stages, inputs, outputs));
  return compileExactly(stages, inputs, outputs);
}
