// Writes seeds/schema/*.schema.json from the schemas of src/catalogue and src/ledger, which are TypeScript.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const { outputFiles } = await build({
  stdin: {
    contents: `export { writeSeedSchemas } from './catalogue/seed-schemas.ts';
      export { writePressingSchema } from './ledger/pressing-schema.ts';`,
    resolveDir: fileURLToPath(new URL('../src', import.meta.url)),
  },
  bundle: true,
  format: 'esm',
  platform: 'node',
  write: false,
});
const { writePressingSchema, writeSeedSchemas } = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`
);
for (const [name, text] of [...writeSeedSchemas(), ['pressing.schema.json', writePressingSchema()]])
  writeFileSync(new URL(`schema/${name}`, import.meta.url), text);
