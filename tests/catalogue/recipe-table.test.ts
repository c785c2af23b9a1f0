import { describe, expect, it } from 'vitest';
import { findRecipe, listRecipes } from '../../src/catalogue/catalogue.ts';

/**
 * The press table as it is commonly handed on, written down apart from the seeds: F, C, seconds, starting point,
 * pressure, mark of the source. Common practice (b) or recalled (c), no published source.
 */
const TABLE = `
tile-face-down    385-400 196-204 240-480   400 204 300  firm            b
tile-face-up      385-400 196-204 240-420   400 204 300  firm            b
mug-press         350-400 177-204 150-300   390 199 210  medium-firm     b
mug-oven          375-400 191-204 720-1080  385 196 900  wrap tension    b
glass-drinkware   310-400 154-204 240-480   360 182 300  light-medium    b
tumbler-press     350-390 177-199 60-120    365 185 75   medium          b
tumbler-oven      350-385 177-196 300-480   375 191 360  sleeve tension  c
aluminium         385-400 196-204 35-90     400 204 60   medium          b
hardboard         375-400 191-204 50-90     400 204 60   medium-firm     b
frp               375-400 191-204 50-80     390 199 60   medium          b
slate             380-400 193-204 360-600   400 204 480  medium-firm     b
glass-flat        375-400 191-204 210-480   390 199 270  light-medium    b
neoprene          360-400 182-204 30-60     390 199 45   light-medium    b
polyester-fabric  375-400 191-204 30-60     390 199 45   light-medium    b
puzzle-card       375-400 191-204 40-60     390 199 50   medium          c
absorbent-stone   385-400 196-204 240-420   400 204 300  medium-firm     c
acrylic           320-365 160-185 60-150    350 177 90   light           c
coated-wood       375-400 191-204 50-90     390 199 60   medium-firm     b
`
  .trim()
  .split('\n')
  .map((line) => line.trim().split(/\s{2,}/));

/** Times for some articles of a recipe. */
const VARIANTS = `
tile-face-down    4.25 in x 6 mm                    240-300
tile-face-down    6 in                              300-360
tile-face-down    8 in, or 8 mm thick               300-480
mug-press         11 oz                             180-240
mug-press         15 oz                             210-300
aluminium         tag, 0.5 mm                       35-50
aluminium         panel, 1.1 mm                     60-75
aluminium         panel 16 x 20 in and larger       75-150
hardboard         6 mm and thicker, or cork-backed  60-90
polyester-fabric  performance knit                  30-40
`
  .trim()
  .split('\n')
  .map((line) => line.trim().split(/\s{2,}/));

const span = (text: string) => {
  const [min, max] = text.split('-').map(Number);
  return { min, max };
};

describe('the table of press recipes', () => {
  it('has every recipe of the seeds, once', () => {
    expect(TABLE.map(([id]) => id).sort()).toEqual(listRecipes().map(({ id }) => id));
  });

  it.each(TABLE.map((cells) => [cells[0]!.split(' ')[0]!, cells] as const))(
    '%s',
    (id, [, ranges, start, pressure, mark]) => {
      const recipe = findRecipe(id)!;
      const [f, c, s] = ranges!.split(/ +/).map(span);
      const [startF, startC, startS] = start!.split(' ').map(Number);
      expect(recipe.temperatureF).toEqual({ ...f, start: startF });
      expect(recipe.temperatureC).toEqual({ ...c, start: startC });
      expect(recipe.timeS).toEqual({ ...s, start: startS });
      expect(recipe.pressure).toBe(pressure);
      expect(recipe.sources[0]!.mark).toBe(mark);
    },
  );

  it('has every time variant of the seeds', () => {
    const inSeeds = listRecipes().flatMap((recipe) =>
      (recipe.timeVariants ?? []).map(({ when, timeS }) => ({ id: recipe.id, when, ...timeS })),
    );
    const inTable = VARIANTS.map(([id, when, range]) => ({ id, when, ...span(range!) }));
    expect(inSeeds).toEqual(expect.arrayContaining(inTable));
    expect(inSeeds.length).toBe(inTable.length);
  });
});

describe('the way through the press', () => {
  it('a ceramic board with the transfer on top: 400 F (204 C), 300 s, firm, pad above the paper', () => {
    const recipe = findRecipe('tile-face-up')!;
    expect([recipe.temperatureF.start, recipe.temperatureC.start, recipe.timeS.start]).toEqual([
      400, 204, 300,
    ]);
    expect(recipe.pressure).toBe('firm');
    const [blank, transfer, pad] = ['face up', 'printed side down', 'pad'].map((words) =>
      recipe.layers.findIndex((layer) => layer.includes(words)),
    );
    expect([blank! < transfer!, transfer! < pad!]).toEqual([true, true]);
  });

  it.each(listRecipes().map((recipe) => [recipe.id, recipe] as const))(
    '%s: the printed side meets the coated face, with paper between dye and heat',
    (_, { method, layers }) => {
      const transfer = layers.findIndex((layer) => layer.startsWith('transfer'));
      expect(transfer).toBeGreaterThan(-1);
      if (method !== 'flat-press') {
        // From the body outwards: the body, then the transfer with the print towards it.
        expect(transfer).toBe(1);
        expect(layers[transfer]).toContain('printed side in');
        return;
      }
      const down = layers[transfer]!.includes('printed side down');
      const piece = transfer + (down ? -1 : 1);
      expect(layers[piece]).toMatch(/blank|slate|glass|fabric|puzzle/);
      const behind = layers[transfer + (down ? 1 : -1)]!;
      expect(behind).toContain('protective paper');
      expect([layers[0], layers.at(-1)]).toEqual([
        expect.stringContaining('lower platen'),
        expect.stringContaining('hot upper platen'),
      ]);
    },
  );
});
