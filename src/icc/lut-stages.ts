import { type Curve, evaluateCurve, isIdentity } from './curve.ts';
import { makeGridStage } from './grid-stage.ts';
import type { Lut, LutElement } from './lut.ts';
import { matrixStage } from './matrix-stage.ts';
import type { Stage } from './stage.ts';

/** The elements of a table as stages on values 0…1. */
export function makeLutStages(lut: Lut): Stage[] {
  return lut.elements.map(makeElementStage);
}

function makeElementStage(element: LutElement): Stage {
  if (element.kind === 'grid') return makeGridStage(element);
  if (element.kind === 'curves')
    return element.curves.every(isIdentity) ? clipStage(element.curves.length) : curveStage(element.curves);
  return matrixStage(element.matrix, element.offset);
}

function curveStage(curves: readonly Curve[]): Stage {
  return (values) => {
    for (let i = 0; i < curves.length; i++) values[i] = evaluateCurve(curves[i]!, values[i]!);
  };
}

/** Also curves that change nothing clip: the domain of every element is 0…1. */
function clipStage(channels: number): Stage {
  return (values) => {
    for (let i = 0; i < channels; i++) values[i] = Math.min(1, Math.max(0, values[i]!));
  };
}
