import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { XYZ_D50 } from '../../src/colour/lab.ts';
import { applyMatrix } from '../../src/colour/matrix3.ts';
import { oklabToXyzD50, xyzD50ToOklab } from '../../src/colour/oklab.ts';
import { decodeSrgb, SRGB_TO_XYZ_D50 } from '../../src/colour/srgb.ts';

describe('Oklab', () => {
  it('white is 1, 0, 0', () => {
    const [l, a, b] = xyzD50ToOklab(XYZ_D50);
    expect(l).toBeCloseTo(1, 4);
    expect(a).toBeCloseTo(0, 4);
    expect(b).toBeCloseTo(0, 4);
  });

  // The other side starts from rounded matrices of sRGB: 3 decimals are a tenth of a visible step.
  it('agrees with culori over the cube of sRGB, and comes back', () => {
    const other = converter('oklab');
    for (let i = 0; i < 5 ** 3; i++) {
      const [r, g, b] = [i % 5, Math.floor(i / 5) % 5, Math.floor(i / 25)].map((step) => step / 4) as [
        number,
        number,
        number,
      ];
      const xyz = applyMatrix(SRGB_TO_XYZ_D50, [decodeSrgb(r), decodeSrgb(g), decodeSrgb(b)]);
      const found = xyzD50ToOklab(xyz);
      const wanted = other({ mode: 'rgb', r, g, b });
      [wanted.l, wanted.a, wanted.b].forEach((value, k) => {
        expect(found[k]).toBeCloseTo(value, 3);
      });
      oklabToXyzD50(found).forEach((value, k) => {
        expect(value).toBeCloseTo(xyz[k]!, 9);
      });
    }
  });
});
