// Writes seeds/schema/*.schema.json from the schemas of src/catalogue. They are TypeScript: `npm run build` first.
import { writeFileSync } from 'node:fs';

const { writeSeedSchemas } = await import('../dist/src/catalogue/seed-schemas.js');
for (const [name, text] of writeSeedSchemas())
  writeFileSync(new URL(`schema/${name}`, import.meta.url), text);
