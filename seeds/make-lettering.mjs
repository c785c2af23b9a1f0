// Writes src/lettering/glyph-data.ts: the outlines of a font as numbers, so that text on a sheet or a proof needs no
// font on any machine. The font is a package for building only; its licence is in seeds/lettering/OFL.txt.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import opentype from 'opentype.js';

const require = createRequire(import.meta.url);

// The package splits the font by script; a character is taken from the first part that has it.
const PARTS = ['latin', 'latin-ext', 'vietnamese', 'greek', 'cyrillic', 'math'];
const fonts = PARTS.map((part) => {
  const bytes = readFileSync(require.resolve(`@fontsource/roboto/files/roboto-${part}-400-normal.woff`));
  return opentype.parse(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.byteLength));
});
const [first] = fonts;

/**
 * One string: whole numbers relative to where the last command ended, y downwards; a letter stands for all the commands
 * of its kind that follow. Lines without length and the line that `z` draws anyway are left out.
 */
function encode({ commands }) {
  let at = [0, 0];
  let start = at;
  let last = '';
  let text = '';
  commands.forEach((command, i) => {
    const points = [
      [command.x1, command.y1],
      [command.x2, command.y2],
      [command.x, command.y],
    ]
      .filter(([x]) => x !== undefined)
      .map(([x, y]) => [Math.round(x), Math.round(-y)]); // the y axis of a font points up
    const end = points.at(-1);
    if (command.type === 'M') start = end;
    const closes = commands[i + 1]?.type === 'Z' && same(end, start);
    if (command.type === 'L' && (same(end, at) || closes)) return;
    const letter = command.type.toLowerCase();
    if (letter !== last || letter === 'z') text += letter;
    last = letter;
    for (const [x, y] of points) text += ` ${x - at[0]} ${y - at[1]}`;
    at = end ?? start;
  });
  return text.replaceAll(' -', '-').replace(/([a-z]) /g, '$1');
}

const same = (one, other) => one[0] === other[0] && one[1] === other[1];

const glyphs = {};
const add = (key, glyph) => {
  glyphs[key] = `${Math.round(glyph.advanceWidth)} ${encode(glyph.path)}`;
};
for (const font of fonts)
  for (const code of Object.keys(font.tables.cmap.glyphIndexMap).map(Number)) {
    const character = String.fromCodePoint(code);
    // A character is asked for by itself: rules for neighbours, which some readers cannot take, are not looked at.
    if (code > 0x20 && !/\p{C}/u.test(character) && !(character in glyphs))
      add(character, font.charToGlyph(character));
  }
add(' ', first.charToGlyph(' '));
add('', first.glyphs.get(0));

const data = {
  capHeight: first.tables.os2.sCapHeight,
  glyphs: Object.fromEntries(Object.entries(glyphs).sort(([a], [b]) => (a < b ? -1 : 1))),
};
// Escaped, so that the module stays one byte a character in memory.
const json = JSON.stringify(data).replace(
  /[^ -~]/g,
  (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
);
writeFileSync(
  new URL('../src/lettering/glyph-data.ts', import.meta.url),
  [
    '// Made by seeds/make-lettering.mjs from a font package (licence: seeds/lettering/OFL.txt). Change that, not this.',
    `/** JSON of \`GlyphTable\`. ${first.names.windows?.copyright?.en ?? ''} */`,
    `export const GLYPH_JSON = ${JSON.stringify(json)};`,
    '',
  ].join('\n'),
);
