import { describe, expect, it } from 'vitest';
import { nameColour } from '../../src/colour/name-colour.ts';

describe('nameColour', () => {
  // Named colours of CSS Color 4, whose own names carry the word.
  it.each([
    ['red', [255, 0, 0], 'bright red'],
    ['lime', [0, 255, 0], 'bright green'],
    ['blue', [0, 0, 255], 'bright blue'],
    ['navy', [0, 0, 128], 'deep blue'],
    ['yellow', [255, 255, 0], 'bright yellow'],
    ['orange', [255, 165, 0], 'bright orange'],
    ['saddlebrown', [139, 69, 19], 'brown'],
    ['olive', [128, 128, 0], 'olive'],
    ['teal', [0, 128, 128], 'teal'],
    ['purple', [128, 0, 128], 'deep purple'],
    ['pink', [255, 192, 203], 'pale pink'],
    ['hotpink', [255, 105, 180], 'bright pink'],
    ['darkgreen', [0, 100, 0], 'deep green'],
    ['gray', [128, 128, 128], 'gray'],
    ['black', [0, 0, 0], 'black'],
    ['white', [255, 255, 255], 'white'],
    ['lightblue', [173, 216, 230], 'pale blue'],
  ] as const)('%s', (_, rgb, name) => expect(nameColour(rgb)).toBe(name));

  it('has a name for every corner and face of the cube', () => {
    for (let r = 0; r <= 255; r += 51)
      for (let g = 0; g <= 255; g += 51)
        for (let b = 0; b <= 255; b += 51) expect(nameColour([r, g, b])).toMatch(/^[a-z]+( [a-z]+)?$/);
  });
});
