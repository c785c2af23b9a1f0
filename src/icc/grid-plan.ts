import { planAxes } from './grid-axes.ts';
import type { GridPlan } from './pixel-grid.ts';
import type { ColourModel } from './profile.ts';
import { STAGE_CHANNELS, type Stage } from './stage.ts';

/** Evaluates the stages at every node of a grid that suits the source's model. `channels` is 3 or 4. */
export function planGrid(
  source: ColourModel,
  stages: readonly Stage[],
  channels: 3 | 4,
  outputs: number,
): GridPlan {
  const axes = planAxes(source, channels);
  const sizes = axes.map(({ size }) => size);
  const places = axes.map(({ size, valueAt }) =>
    Float64Array.from({ length: size }, (_, node) => valueAt(node / (size - 1))),
  );
  const nodes = sizes.reduce((product, size) => product * size, 1);
  const values = new Float32Array(nodes * outputs);
  const colour = new Float64Array(STAGE_CHANNELS);
  const at = new Int32Array(channels);
  for (let node = 0; node < nodes; node++) {
    for (let i = 0; i < channels; i++) colour[i] = places[i]![at[i]!]!;
    for (const stage of stages) stage(colour);
    for (let k = 0; k < outputs; k++) values[node * outputs + k] = colour[k]!;
    // The next node: the last axis varies fastest.
    for (let i = channels - 1; i >= 0 && ++at[i]! === sizes[i]; i--) at[i] = 0;
  }
  return { sizes, shapes: axes.map(({ placeOf }) => placeOf), values, outputs };
}
