/** `count` places evenly spread over `length` pixels, each in the middle of its part. */
export function evenPlaces(length: number, count: number): Int32Array {
  const places = new Int32Array(count);
  for (let i = 0; i < count; i += 1) places[i] = Math.floor(((i + 0.5) * length) / count);
  return places;
}
