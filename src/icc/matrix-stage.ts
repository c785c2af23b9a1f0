import type { Matrix3 } from '../colour/matrix3.ts';
import type { Triple } from '../colour/triple.ts';
import type { Stage } from './stage.ts';

/** matrix · values + offset, on the first three numbers. */
export function matrixStage([red, green, blue]: Matrix3, [r0, g0, b0]: Triple = [0, 0, 0]): Stage {
  const [rr, rg, rb] = red;
  const [gr, gg, gb] = green;
  const [br, bg, bb] = blue;
  return (values) => {
    const r = values[0]!;
    const g = values[1]!;
    const b = values[2]!;
    values[0] = rr * r + rg * g + rb * b + r0;
    values[1] = gr * r + gg * g + gb * b + g0;
    values[2] = br * r + bg * g + bb * b + b0;
  };
}
