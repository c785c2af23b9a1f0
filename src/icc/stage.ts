/**
 * One step of a conversion. It changes the numbers of one colour in place; the array has room for 16, so that a step
 * may leave more numbers than it found. Nothing is allocated per colour.
 */
export type Stage = (values: Float64Array) => void;

/** Room for the most channels a profile can have. */
export const STAGE_CHANNELS = 16;

/** Copies the first `channels` numbers: for so few, a loop is several times as fast as `set`. */
export function copyValues(from: Float64Array, to: Float64Array, channels: number): void {
  for (let i = 0; i < channels; i++) to[i] = from[i]!;
}

/** Runs one colour through the stages; gives the first `outputs` numbers of what comes out. */
export function runStages(stages: readonly Stage[], input: readonly number[], outputs: number): number[] {
  const values = new Float64Array(STAGE_CHANNELS);
  values.set(input);
  for (const stage of stages) stage(values);
  return Array.from(values.subarray(0, outputs));
}
