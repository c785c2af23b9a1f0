/** A field of complex numbers: rows from the top; both sides are powers of two. */
export interface ComplexField {
  readonly width: number;
  readonly height: number;
  readonly re: Float64Array;
  readonly im: Float64Array;
}

/** The discrete Fourier transform of a field, in place and not normalised (Cooley and Tukey 1965, radix 2). */
export function transformField({ width, height, re, im }: ComplexField): void {
  for (let y = 0; y < height; y++)
    transformLine(re.subarray(y * width, (y + 1) * width), im.subarray(y * width, (y + 1) * width));
  const [a, b] = [new Float64Array(height), new Float64Array(height)];
  for (let x = 0; x < width; x++) {
    for (let y = 0; y < height; y++) {
      a[y] = re[y * width + x]!;
      b[y] = im[y * width + x]!;
    }
    transformLine(a, b);
    for (let y = 0; y < height; y++) {
      re[y * width + x] = a[y]!;
      im[y * width + x] = b[y]!;
    }
  }
}

function transformLine(re: Float64Array, im: Float64Array): void {
  const count = re.length;
  for (let i = 1, j = 0; i < count; i++) {
    let bit = count >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j |= bit;
    if (i >= j) continue;
    [re[i], re[j]] = [re[j]!, re[i]!];
    [im[i], im[j]] = [im[j]!, im[i]!];
  }
  for (let size = 2; size <= count; size *= 2) {
    const half = size / 2;
    for (let k = 0; k < half; k++) {
      const cos = Math.cos((2 * Math.PI * k) / size);
      const sin = -Math.sin((2 * Math.PI * k) / size);
      for (let from = k; from < count; from += size) {
        const to = from + half;
        const [x, y] = [re[to]! * cos - im[to]! * sin, re[to]! * sin + im[to]! * cos];
        re[to] = re[from]! - x;
        im[to] = im[from]! - y;
        re[from]! += x;
        im[from]! += y;
      }
    }
  }
}
