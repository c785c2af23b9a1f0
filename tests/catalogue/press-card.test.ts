import { describe, expect, it } from 'vitest';
import { findBlank, listBlanks, listRecipes } from '../../src/catalogue/catalogue.ts';
import { pressCard } from '../../src/catalogue/press-card.ts';
import { findPressureRange } from '../../src/catalogue/pressure-range.ts';
import type { BlankRecord } from '../../src/catalogue/records.ts';

const cardOf = (id: string) => pressCard(findBlank(id)!);
const cautionsOf = (id: string) => cardOf(id).cautions.map((caution) => caution.id);

const tag: BlankRecord = {
  id: 'stall-tag',
  name: 'Stall tag',
  surface: 'first',
  outline: { shape: 'rect', widthMm: 50, heightMm: 20 },
};

describe('pressCard', () => {
  it.each(listBlanks().map((blank) => [blank.id, blank] as const))('%s: a whole card', (_, blank) => {
    const card = pressCard(blank);
    const { timeS, timeMinutes, recipe } = card.recipe!;
    expect(recipe.id).toBe(blank.recipe);
    expect(timeS.min <= timeS.start && timeS.start <= timeS.max).toBe(true);
    expect([timeMinutes.min * 60, timeMinutes.max * 60, timeMinutes.start * 60]).toEqual([
      expect.closeTo(timeS.min, 9),
      expect.closeTo(timeS.max, 9),
      expect.closeTo(timeS.start, 9),
    ]);
    expect(card.mirrored).toBe(blank.surface === 'first');
    expect(card.cautions.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['burns', 'fumes', 'electrical-load']),
    );
    expect(card.alternatives.map((other) => other.recipe.id)).not.toContain(recipe.id);
    expect(card.sources.length).toBeGreaterThan(1);
    expect(card.standing).toContain("maker's sheet wins");
  });

  it('takes the times of the article, and moves the start into them', () => {
    const times = (id: string) => cardOf(id).recipe!.timeS;
    expect(times('mug-11oz')).toEqual({ min: 180, max: 240, start: 210 });
    expect(times('mug-15oz')).toEqual({ min: 210, max: 300, start: 210 });
    // The recipe starts at 60 s: too long for a tag, too short for a large panel.
    expect(times('bookmark-alu')).toEqual({ min: 35, max: 50, start: 50 });
    expect(times('panel-alu-16x20')).toEqual({ min: 75, max: 150, start: 75 });
    expect(times('orn-alu-round')).toEqual({ min: 35, max: 90, start: 60 });
    expect(cardOf('orn-alu-round').recipe!.variant).toBeNull();
  });

  it('offers another way only where it is one for this piece', () => {
    const others = (id: string) => cardOf(id).alternatives.map((other) => other.recipe.id);
    expect(others('tile-ceramic-8in')).toEqual(['tile-face-down']);
    expect(others('mug-11oz')).toEqual(['mug-oven']);
    // A tapered mug does not go into a straight press; acrylic would melt at the heat for plastic sheet.
    expect(others('mug-latte-12oz')).toEqual([]);
    expect(others('keyring-acrylic')).toEqual([]);
    // Pressed as tiles are, but its family does not know the way with the pad on top.
    expect(others('orn-ceramic-round')).toEqual([]);
  });

  it.each([
    [
      'board-glass-cutting',
      ['glass-breakage', 'cutting-boards', 'pinch'],
      ['food-and-lip', 'oven', 'sealed-vessels'],
    ],
    ['tumbler-20oz-straight', ['sealed-vessels', 'food-and-lip', 'oven'], ['glass-breakage', 'pinch']],
    ['mug-latte-12oz', ['oven', 'food-and-lip', 'ceramic-breakage'], ['pinch', 'cutting-boards']],
    ['plate-vehicle-12x6', ['road-and-protective'], ['children', 'food-and-lip']],
    ['tshirt-front', ['fabric-flammability', 'skin-contact', 'children'], ['glass-breakage']],
    ['keyring-acrylic', ['children'], ['oven']],
  ])('%s has the cautions of its family, method and kind', (id, expected, others) => {
    expect(cautionsOf(id)).toEqual(expect.arrayContaining(expected));
    for (const other of others) expect(cautionsOf(id)).not.toContain(other);
  });

  it('says film, base and mirror of the blank, else of its family', () => {
    expect(cardOf('panel-alu-8x10').protectiveFilm).toBe('usual');
    expect(cardOf('keyring-acrylic').protectiveFilm).toBe('usual');
    expect(cardOf('luggage-tag-frp').protectiveFilm).toBe('sometimes');
    expect(cardOf('tile-ceramic-8in')).toMatchObject({
      protectiveFilm: null,
      baseNote: null,
      mirrored: true,
    });
    expect(cardOf('plaque-wood-5x7').baseNote).toContain('wood');
    expect(cardOf('panel-glass-5x7').mirrored).toBe(false);
  });

  it('tells about a second face only where there is one', () => {
    const rules = (id: string) => cardOf(id).rules.map((rule) => rule.id);
    expect(rules('orn-ceramic-round')).toContain('second-side');
    expect(rules('tile-ceramic-8in')).not.toContain('second-side');
  });

  it('names no recipe for a record that names none: the family has several to choose from', () => {
    const card = pressCard({ ...tag, family: 'frp-plastic' });
    expect(card.recipe).toBeNull();
    expect(card.alternatives.map((other) => other.recipe.id)).toEqual(['frp', 'acrylic']);
    expect(card.cautions.map(({ id }) => id)).toContain('pinch');
  });

  it('makes nothing up for a record without family and recipe', () => {
    const card = pressCard(tag);
    expect(card).toMatchObject({ family: null, recipe: null, alternatives: [], sources: [] });
    expect(card.cautions.every(({ families, methods, blanks }) => !families && !methods && !blanks)).toBe(
      true,
    );
  });

  it('runs layers of flat presses from below, of all others from the body', () => {
    for (const blank of listBlanks()) {
      const { recipe, layerOrder } = pressCard(blank).recipe!;
      expect(layerOrder, blank.id).toBe(
        recipe.layers[0] === 'lower platen' || recipe.layers[0]!.startsWith('lower platen')
          ? 'bottom-to-top'
          : 'body-outwards',
      );
    }
  });
});

describe('findPressureRange', () => {
  // For orientation only; recalled, no published source.
  it.each([
    ['light', [20, 30], [1.4, 2.1]],
    ['light-medium', [20, 45], [1.4, 3.1]],
    ['medium', [35, 45], [2.4, 3.1]],
    ['medium-firm', [35, undefined], [2.4, undefined]],
    ['firm', [50, undefined], [3.4, undefined]],
  ] as const)('%s', (word, psi, bar) => {
    const range = findPressureRange(word)!;
    expect([range.psi.min, range.psi.max]).toEqual(psi);
    expect([range.bar.min, range.bar.max]).toEqual(bar);
  });

  it('has none for tension, and one for every other word of the recipes', () => {
    for (const { pressure } of listRecipes()) {
      expect(findPressureRange(pressure) === null, pressure).toBe(pressure.endsWith('tension'));
    }
  });
});
