import { capHeightUnits, findGlyph } from './find-glyph.ts';

/**
 * The characters that are drawn, one code point each: composed (NFC), on one line, without what shows nothing by itself
 * (joiners, variation selectors, soft hyphens, marks of direction).
 */
export function charactersOf(text: string): readonly string[] {
  return [
    ...text
      .normalize('NFC')
      .replace(/\s/gu, ' ')
      .replace(/\p{Default_Ignorable_Code_Point}/gu, ''),
  ];
}

/** Width of a text set at this height of its capitals: from its origin to where the next letter would stand. */
export function measureText(text: string, capHeightMm: number): number {
  const units = charactersOf(text).reduce((sum, character) => sum + findGlyph(character).advance, 0);
  return (units * capHeightMm) / capHeightUnits();
}
