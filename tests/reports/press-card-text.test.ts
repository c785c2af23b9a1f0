import { describe, expect, it } from 'vitest';
import { findBlank, listBlanks } from '../../src/catalogue/catalogue.ts';
import { pressCard } from '../../src/catalogue/press-card.ts';
import type { BlankRecord } from '../../src/catalogue/records.ts';
import { renderPressCard } from '../../src/reports/press-card-text.ts';
import { secondsInWords } from '../../src/reports/press-words.ts';
import { expectGolden } from '../golden.ts';

const page = { colour: false, width: 80 };
const render = (blank: BlankRecord, width = 80) => renderPressCard(pressCard(blank), { ...page, width });

describe('renderPressCard', () => {
  it.each([
    'mug-11oz',
    'tile-ceramic-8in',
    'board-glass-cutting',
    'tumbler-20oz-tapered',
    'keyring-acrylic',
    'panel-alu-16x20',
  ])('%s as reviewed', (id) => {
    expectGolden(`press/${id}.txt`, render(findBlank(id)!));
  });

  it('starts with the blank and ends with who has the last word', () => {
    for (const blank of listBlanks()) {
      const text = render(blank, 100);
      expect(text.startsWith(blank.name), blank.id).toBe(true);
      expect(text.trimEnd().split('\n\n').at(-1), blank.id).toMatch(/^The blank maker's sheet wins/);
    }
  });

  it('tells every number, layer and caution of the card', () => {
    for (const blank of listBlanks()) {
      const card = pressCard(blank);
      const text = flat(render(blank));
      const { recipe, timeS } = card.recipe!;
      const { temperatureC: c, temperatureF: f } = recipe;
      expect(text).toContain(`${c.start} C (${f.start} F) for ${secondsInWords(timeS.start)}`);
      expect(text).toContain(`${c.min}-${c.max} C (${f.min}-${f.max} F)`);
      expect(text).toContain(`${timeS.min}-${timeS.max} s`);
      recipe.layers.forEach((layer, i) => {
        expect(text).toContain(`${i + 1} ${layer}`);
      });
      for (const caution of card.cautions) expect(text).toContain(caution.text);
    }
  });

  it('says MIRRORED and NOT mirrored where they belong', () => {
    expect(render(findBlank('tile-ceramic-8in')!)).toContain('MIRRORED');
    expect(render(findBlank('board-glass-cutting')!)).toContain('NOT mirrored');
    expect(render(findBlank('board-glass-cutting')!)).not.toContain('MIRRORED');
  });

  it('keeps within the page, from 40 to 100 columns', () => {
    for (const width of [40, 60, 80, 100]) {
      for (const blank of listBlanks()) {
        const longest = Math.max(
          ...render(blank, width)
            .split('\n')
            .map((line) => line.length),
        );
        expect(longest, `${blank.id} at ${width}`).toBeLessThanOrEqual(width);
      }
    }
  });

  it('tells the choice for a record without a recipe, and no recipe without a family', () => {
    const sign: BlankRecord = {
      id: 'stall-sign',
      name: 'Stall sign \u202e',
      surface: 'first',
      outline: { shape: 'rect', widthMm: 100, heightMm: 50 },
    };
    expectGolden('press/no-recipe.txt', render({ ...sign, family: 'frp-plastic' }));
    const bare = render(sign);
    expect(bare).not.toMatch(/\d+ C \(\d+ F\) for/);
    expect(bare).not.toContain('\u202e');
  });
});

describe('secondsInWords', () => {
  it.each([
    [45, '45 s'],
    [60, '60 s (1 min)'],
    [75, '75 s (1 min 15 s)'],
    [900, '900 s (15 min)'],
  ])('%i', (seconds, words) => {
    expect(secondsInWords(seconds)).toBe(words);
  });
});

/** One line, so that wrapping does not matter. */
function flat(text: string): string {
  return text.replaceAll(/\s+/g, ' ');
}
