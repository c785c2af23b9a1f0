import { copyValues, STAGE_CHANNELS, type Stage } from './stage.ts';

/**
 * Width of the difference quotient: half a cell of a usual table of ink, so that slopes change evenly from cell to cell
 * and neighbouring colours are refined alike.
 */
const STEP = 1 / 16;
/** Added to the diagonal, in squared units of Lab per full ink: keeps the step short where inks do little. */
const DAMPING = 1;

/**
 * One Gauss-Newton step from a device colour towards the one that prints `target`: the shortest change of device
 * values that leads there on the slopes of the forward table, clipped to 0…1. Changes `device`, and `printed`, the Lab
 * that it prints, in place. It takes away what the inverse table loses between its nodes; whether it came nearer is for
 * the caller to see.
 */
export type DeviceRefiner = (device: Float64Array, printed: Float64Array, target: Float64Array) => void;

/** `toLab` are the stages from device values to Lab. */
export function makeDeviceRefiner(toLab: readonly Stage[], channels: number): DeviceRefiner {
  const slopes = new Float64Array(3 * channels);
  const trial = new Float64Array(STAGE_CHANNELS);
  const seen = new Float64Array(STAGE_CHANNELS);
  const print = (): void => {
    copyValues(trial, seen, channels);
    for (const stage of toLab) stage(seen);
  };
  return (device, printed, target) => {
    copyValues(device, trial, channels);
    for (let k = 0; k < channels; k++) {
      const step = device[k]! < 0.5 ? STEP : -STEP;
      trial[k] = device[k]! + step;
      print();
      trial[k] = device[k]!;
      for (let j = 0; j < 3; j++) slopes[3 * k + j] = (seen[j]! - printed[j]!) / step;
    }
    const [u, v, w] = solveNormal(slopes, channels, target, printed);
    for (let k = 0; k < channels; k++) {
      const change = slopes[3 * k]! * u + slopes[3 * k + 1]! * v + slopes[3 * k + 2]! * w;
      trial[k] = Math.min(1, Math.max(0, device[k]! + change));
    }
    copyValues(trial, device, channels);
    print();
    copyValues(seen, printed, 3);
  };
}

/** Solves (J J^T + damping) x = target - printed; the change of the device is then J^T x. */
function solveNormal(
  slopes: Float64Array,
  channels: number,
  target: Float64Array,
  printed: Float64Array,
): readonly [number, number, number] {
  let aa = DAMPING;
  let ab = 0;
  let ac = 0;
  let bb = DAMPING;
  let bc = 0;
  let cc = DAMPING;
  for (let k = 0; k < channels; k++) {
    const a = slopes[3 * k]!;
    const b = slopes[3 * k + 1]!;
    const c = slopes[3 * k + 2]!;
    aa += a * a;
    ab += a * b;
    ac += a * c;
    bb += b * b;
    bc += b * c;
    cc += c * c;
  }
  const x = target[0]! - printed[0]!;
  const y = target[1]! - printed[1]!;
  const z = target[2]! - printed[2]!;
  const minorA = bb * cc - bc * bc;
  const minorB = ac * bc - ab * cc;
  const minorC = ab * bc - ac * bb;
  const determinant = aa * minorA + ab * minorB + ac * minorC;
  return [
    (minorA * x + minorB * y + minorC * z) / determinant,
    (minorB * x + (aa * cc - ac * ac) * y + (ab * ac - aa * bc) * z) / determinant,
    (minorC * x + (ab * ac - aa * bc) * y + (aa * bb - ab * ab) * z) / determinant,
  ];
}
