import type { ArtworkReport, RectPx } from '../src/index.ts';
import { askWitness } from './witness.ts';

/** What a print job is, without a word of the program's own. */
export interface WitnessedJob {
  /** Name and bytes of the artwork. */
  readonly file: string;
  readonly bytes: Uint8Array;
  readonly canvasPx: readonly [number, number];
  readonly mirrored: boolean;
  readonly turnedBy: 0 | 180;
}

/** Where the plan lays the art on the canvas, before it is mirrored. */
export function plannedPx({ plan, contentBoxPx }: ArtworkReport): RectPx {
  const resize = plan.find(({ step }) => step === 'resize');
  const pad = plan.find(({ step }) => step === 'pad');
  if (pad?.step !== 'pad') throw new Error('Expected the plan to lay the art on a canvas');
  const size =
    resize?.step === 'resize' ? resize : { widthPx: contentBoxPx!.width, heightPx: contentBoxPx!.height };
  return { x: pad.x, y: pad.y, width: size.widthPx, height: size.heightPx };
}

/**
 * The same job by ImageMagick, as RGBA: turn by the tag, crop, scale with the same kernel, lay on white, mirror.
 * Content box and place are those of the report; others hold them against their truth.
 */
export function jobByImageMagick(job: WitnessedJob, report: ArtworkReport): Buffer {
  const { file, bytes, canvasPx, mirrored, turnedBy } = job;
  const box = report.contentBoxPx!;
  const place = plannedPx(report);
  const args = [
    ...['-size', canvasPx.join('x'), 'xc:white', '('],
    ...[file, '-auto-orient', '-crop', `${box.width}x${box.height}+${box.x}+${box.y}`, '+repage'],
    ...['-filter', 'Lanczos', '-resize', `${place.width}x${place.height}!`, '-rotate', `${turnedBy}`, ')'],
    ...['-geometry', `+${place.x}+${place.y}`, '-composite', ...(mirrored ? ['-flop'] : [])],
    ...['-depth', '8', 'rgba:-'],
  ];
  const answer = askWitness('convert', args, { [file]: bytes });
  if (answer.status !== 0) throw new Error(answer.stderr);
  return answer.stdout;
}

/** Mean difference of the colour samples, in levels of 255, with the second picture moved on by `shift` pixels. */
export function meanDifference(ours: Uint8Array, theirs: Uint8Array, shift: number): number {
  let sum = 0;
  let samples = 0;
  const skipped = Math.abs(shift) * 4;
  for (let at = skipped; at < ours.length - skipped; at += 4) {
    for (let channel = at; channel < at + 3; channel += 1)
      sum += Math.abs(ours[channel]! - theirs[channel - shift * 4]!);
    samples += 3;
  }
  return sum / samples;
}
