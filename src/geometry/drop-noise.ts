/**
 * The number to a millionth: without the noise of double arithmetic, which must not decide what lies exactly on a limit
 * or on a pixel's edge. NaN and infinities stay what they are.
 */
export function dropNoise(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
