// Writes seeds/schema/*.schema.json from the schemas of src/catalogue, which are TypeScript.
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const { outputFiles } = await build({
  entryPoints: [fileURLToPath(new URL('../src/catalogue/seed-schemas.ts', import.meta.url))],
  bundle: true,
  format: 'esm',
  platform: 'node',
  write: false,
});
const { writeSeedSchemas } = await import(
  `data:text/javascript;base64,${Buffer.from(outputFiles[0].contents).toString('base64')}`
);
for (const [name, text] of writeSeedSchemas())
  writeFileSync(new URL(`schema/${name}`, import.meta.url), text);
