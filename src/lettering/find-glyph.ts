import type { Path } from '../geometry/path.ts';
import { decodeOutline } from './decode-outline.ts';
import { GLYPH_JSON } from './glyph-data.ts';

/** The outline of one character, in units of the font, from its origin on the baseline, y down. */
export interface Glyph {
  readonly advance: number;
  readonly outline: Path;
}

/** What the build takes from the font: of each character its advance, a space, its outline; '' is the visible box. */
interface GlyphTable {
  /** Height of an H, in units of the font. */
  readonly capHeight: number;
  readonly glyphs: Readonly<Record<string, string>>;
}

let table: GlyphTable | undefined;
const decoded = new Map<string, Glyph>();

/** Parsed when the first text is set: most runs set none. */
function glyphTable(): GlyphTable {
  table ??= JSON.parse(GLYPH_JSON) as GlyphTable;
  return table;
}

/** Height of an H, in units of the font. */
export function capHeightUnits(): number {
  return glyphTable().capHeight;
}

/** False for a character that is drawn as a box. */
export function hasGlyph(character: string): boolean {
  return character !== '' && Object.hasOwn(glyphTable().glyphs, character);
}

/** The glyph of one character (a code point); a crossed box where the font has none. */
export function findGlyph(character: string): Glyph {
  const key = hasGlyph(character) ? character : '';
  let glyph = decoded.get(key);
  if (!glyph) {
    const text = glyphTable().glyphs[key]!;
    const space = text.indexOf(' ');
    glyph = { advance: Number(text.slice(0, space)), outline: decodeOutline(text.slice(space + 1)) };
    decoded.set(key, glyph);
  }
  return glyph;
}
