// Writes src/catalogue/seed-data.ts: the seeds as a typed module, so that the library needs no disk
// (and no JSON import, which prints a warning on Node 20). The profiles of the printing conditions go into a module of
// their own, src/conditions/profile-data.ts, which is loaded only when colours are judged; the outlines of letters into
// src/lettering/glyph-data.ts, and the loop over pixels that is written in WebAssembly into src/icc/convert-grid3-wasm.ts.
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import './make-kernel.mjs';
import './make-lettering.mjs';

const here = new URL('./', import.meta.url);
const read = (name) => JSON.parse(readFileSync(new URL(name, here), 'utf8'));

const blanks = read('blanks.json');
const families = read('families.json');
const recipes = read('press-recipes.json');
const cautions = read('cautions.json');
const papers = read('papers.json');
const practice = read('practice.json');
const { conditions } = read('printing-conditions.json');

const constants = [
  ['BLANKS', 'readonly BlankRecord[]', blanks.blanks],
  ['BLANKS_WARNING', 'string', blanks.warning],
  ['FAMILIES', 'readonly FamilyRecord[]', families.families],
  ['PRESS_RECIPES', 'readonly PressRecipe[]', recipes.recipes],
  ['PRESS_WARNING', 'string', recipes.warning],
  ['PRESSURE_WORDS', 'PressureWords', recipes.pressureWords],
  ['PRESS_RULES', 'readonly PressRule[]', recipes.rules],
  ['NO_RECIPE', 'readonly NoRecipe[]', recipes.noRecipe],
  ['CAUTIONS', 'readonly Caution[]', cautions.cautions],
  ['STANDING_CAUTION', 'string', cautions.standing],
  ['SIGNAL_WORDS_NOTE', 'string', cautions.signalWords],
  ['SHEETS', 'readonly SheetRecord[]', papers.sheets],
  ['ROLLS', 'readonly RollRecord[]', papers.rolls],
  ['MARGINS', 'readonly MarginRecord[]', papers.margins],
  ['PAPER_BEHAVIOUR', 'readonly PaperBehaviourRecord[]', papers.behaviour],
  ['CONDITIONS', 'readonly ConditionRecord[]', conditions],
  ['PRACTICE', 'readonly PracticeLimit[]', practice.limits],
];

const seedFiles = [blanks, families, recipes, cautions, papers, practice, conditions];
const sha256 = createHash('sha256').update(JSON.stringify(seedFiles)).digest('hex');

// A string for JSON.parse is read several times as fast as the same literal.
const text = [
  '// Made by seeds/make-module.mjs from the files in seeds/. Change those, not this.',
  "import type { ConditionRecord } from './condition-record.ts';",
  "import type { MarginRecord, PaperBehaviourRecord, RollRecord, SheetRecord } from './paper-records.ts';",
  "import type { Caution, NoRecipe, PressRecipe, PressRule, PressureWords } from './press-records.ts';",
  "import type { PracticeLimit } from './practice.ts';",
  "import type { BlankRecord, FamilyRecord } from './records.ts';",
  '',
  '/** Changes with every value of the seeds. */',
  `export const SEEDS_SHA256 = '${sha256}';\n`,
  ...constants.map(
    ([name, type, value]) =>
      `export const ${name}: ${type} = JSON.parse(${JSON.stringify(JSON.stringify(value))});\n`,
  ),
].join('\n');

writeFileSync(new URL('../src/catalogue/seed-data.ts', here), text);

// What is costly to measure of a profile is measured here, once: a run that judges one picture would wait for it.
const { outputFiles } = await build({
  stdin: {
    contents:
      "export * from './src/icc/gamut-table.ts'; export { readProfile } from './src/icc/read-profile.ts';",
    resolveDir: fileURLToPath(new URL('../', here)),
  },
  bundle: true,
  format: 'esm',
  platform: 'node',
  write: false,
});
const engine = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`
);
const profiles = conditions.map(({ id, profile }) => {
  const icc = readFileSync(new URL(profile, here));
  const { noise, differences } = engine.measureGamutGrid(engine.readProfile(icc));
  const bytes = Buffer.alloc(2 * differences.length);
  differences.forEach((difference, i) => {
    bytes.writeUInt16LE(difference, 2 * i);
  });
  return [id, { icc: icc.toString('base64'), noise, differences: bytes.toString('base64') }];
});
writeFileSync(
  new URL('../src/conditions/profile-data.ts', here),
  [
    '// Made by seeds/make-module.mjs from the profiles in seeds/conditions/. Change those, not this.',
    '/**',
    ' * By the id of each printing condition: its profile, the noise of it, and the differences of its gamut grid for',
    ' * sRGB, 16 bits each, the lower byte first. Bytes are base64.',
    ' */',
    'export const PROFILE_DATA: Readonly<',
    '  Record<string, { readonly icc: string; readonly noise: number; readonly differences: string }>',
    `> = ${JSON.stringify(Object.fromEntries(profiles))};`,
    '',
  ].join('\n'),
);
