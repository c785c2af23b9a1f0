import { expect, it } from 'vitest';
import { formatArea } from '../../src/geometry/area.ts';

// 1 in is 25.4 mm, so 1 sq in is 645.16 mm2.
it.each([
  [0.4, 'less than 1 mm2'],
  [25, '25 mm2 (0.04 sq in)'],
  [645.16, '6.5 cm2 (1 sq in)'],
  [2500, '25 cm2 (3.88 sq in)'],
])('%d mm2 in both units', (mm2, words) => expect(formatArea(mm2)).toBe(words));
