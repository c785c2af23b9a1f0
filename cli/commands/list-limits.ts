import { LIMITS, type LimitName } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Io } from '../io.ts';

/** `limits`: the table of limits, each with its meaning and where its value comes from. */
export function printLimits(options: TypedOptions, { stdout }: Io): number {
  if (options.json) stdout.write(`${JSON.stringify({ schemaVersion: 1, limits: LIMITS }, null, 2)}\n`);
  else
    for (const name of Object.keys(LIMITS) as LimitName[]) {
      const { value, unit, meaning, source } = LIMITS[name];
      stdout.write(`${name}=${value} ${unit}\n    ${meaning}\n    ${source}\n`);
    }
  return 0;
}
