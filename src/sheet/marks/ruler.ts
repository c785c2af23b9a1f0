import type { DrawnItem } from '../../geometry/drawing.ts';
import { MM_PER_INCH } from '../../geometry/length.ts';
import type { MarkBlock } from './mark-block.ts';
import { BLACK, LINE_MM } from './mark-style.ts';
import { withCaption } from './text-block.ts';

const [LONGEST_MM, SHORTEST_MM, STEP_MM] = [100, 30, 10];
/** Below this a caption of more than its length would be wider than the ruler. */
const NARROW_MM = 50;
const [TICK_MM, LONG_TICK_MM, BAR_MM] = [1.8, 3, 0.6];

/**
 * Rulers in the order in which they are tried: 100 mm with all its words, then with fewer, then shorter ones. At 30 mm a
 * page fitted into its margins, which is 3 % off, is wrong by a millimetre, and that can still be read off; below, nothing.
 */
export function rulerVariants(): readonly (() => MarkBlock)[] {
  const variants = [() => ruler(LONGEST_MM, true)];
  for (let lengthMm = LONGEST_MM; lengthMm >= SHORTEST_MM; lengthMm -= STEP_MM)
    variants.push(() => ruler(lengthMm, false));
  return variants;
}

/** A bar whose ends are the ends of its first and last tick: what is measured is the ink, end to end. */
function ruler(lengthMm: number, explained: boolean): MarkBlock {
  const ticks = Array.from({ length: lengthMm / STEP_MM + 1 }, (_, i): DrawnItem => {
    const at = i * STEP_MM;
    const height = at % (5 * STEP_MM) === 0 || at === lengthMm ? LONG_TICK_MM : TICK_MM;
    // Those within stand about their place, the two at the ends inside the length.
    const x = at === 0 ? 0 : at === lengthMm ? lengthMm - LINE_MM : at - LINE_MM / 2;
    return rect(x, LONG_TICK_MM - height, LINE_MM, height);
  });
  const length = `${lengthMm} mm (${(lengthMm / MM_PER_INCH).toFixed(2)} in)`;
  const words = explained
    ? [`Measure me: ${length} from end to end.`, 'If not, the page was scaled: do not press it.']
    : [lengthMm < NARROW_MM ? length : `${length} from end to end`];
  const bar = rect(0, LONG_TICK_MM, lengthMm, BAR_MM);
  const picture = { widthMm: lengthMm, heightMm: LONG_TICK_MM + BAR_MM, drawing: [bar, ...ticks], lengthMm };
  return withCaption(picture, words);
}

function rect(x: number, y: number, width: number, height: number): DrawnItem {
  return { kind: 'rect', rectMm: { x, y, width, height }, colour: BLACK };
}
