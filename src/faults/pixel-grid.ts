/** Below, nearly every place lies on some grid. */
const LEAST_PITCH = 2;
/** How far the last place may drift between two pitches that are tried, px. */
const DRIFT_PX = 0.1;
/** Odds against so many places on a grid by chance, as a natural logarithm (own choice). */
const LEAST_ODDS = Math.log(1e7);
/**
 * A pixel's middle that lies on the end of an old pixel goes to either side, so places are off by one just then: that
 * takes a pitch of halves, thirds and so on, never a whole one, and puts half as many places more on a grid at most.
 */
const TIE_PX = 1e-3;
const TIES = 1.5;
/** Halvings, nearly, of the span in which a pitch is refined. */
const REFININGS = 30;

/**
 * The largest pitch, at most `most`, px, of a grid with at most one of the places at each of its points, rounded to
 * a whole number: from 2. Places in rising order, at least one. Null where there is none, or where so few places would
 * lie on one by chance.
 */
export function findPixelGrid(places: readonly number[], most: number): number | null {
  const first = places[0]!;
  const span = Math.max(1, places.at(-1)! - first);
  for (let pitch = most; pitch >= LEAST_PITCH; pitch -= (DRIFT_PX * pitch) / span) {
    if (places.length * Math.log(pitch) < LEAST_ODDS) return null;
    let [least, largest] = [0, 0];
    // Most pitches fail at one of the first places.
    const isNear = places.every((place) => {
      const off = place - first - Math.round((place - first) / pitch) * pitch;
      least = Math.min(least, off);
      largest = Math.max(largest, off);
      return largest - least < 1 + 2 * DRIFT_PX;
    });
    const refined = isNear ? refine(places, pitch, (DRIFT_PX * pitch) / span) : null;
    if (refined !== null) return refined;
  }
  return null;
}

/** The pitch beside this one by which the places are off least, where that is by less than one: else rounding does not explain them. */
function refine(places: readonly number[], pitch: number, by: number): number | null {
  const first = places[0]!;
  const points = places.map((place) => Math.round((place - first) / pitch));
  if (points.some((point, i) => i > 0 && point === points[i - 1])) return null;
  // The larger of linear functions less the smaller of them has one valley.
  const widthAt = (tried: number) => {
    let [least, largest] = [0, 0];
    for (let i = 0; i < places.length; i += 1) {
      const off = places[i]! - first - points[i]! * tried;
      least = Math.min(least, off);
      largest = Math.max(largest, off);
    }
    return largest - least;
  };
  let [low, high] = [pitch - by, pitch + by];
  for (let i = 0; i < REFININGS; i += 1) {
    const [left, right] = [low + (high - low) / 3, high - (high - low) / 3];
    if (widthAt(left) < widthAt(right)) high = right;
    else low = left;
  }
  const refined = (low + high) / 2;
  const isWhole = Math.abs(refined - Math.round(refined)) * points.at(-1)! < 1 / 2;
  if (isWhole) return widthAt(refined) < 1 - TIE_PX ? refined : null;
  const isPlain = places.length * Math.log(refined / TIES) > LEAST_ODDS;
  return isPlain && widthAt(refined) < 1 + TIE_PX ? refined : null;
}
