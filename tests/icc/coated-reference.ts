import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The reference condition that ships. */
export const COATED_REFERENCE = readFileSync(
  join(dirname(fileURLToPath(import.meta.url)), '../../seeds/conditions/coated-reference.icc'),
);
