import { escapeJsonText, showHidden } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { Io } from '../io.ts';
import { gatherSettings } from '../settings/gather-settings.ts';
import { environmentNameOf, SETTINGS } from '../settings/setting-table.ts';

/** `config`: the settings in force and where each comes from. Returns the exit code. @throws BlankcheckError `bad-config` */
export async function showSettings({ json }: TypedOptions, io: Io): Promise<number> {
  tellUnknownVariables(io);
  const settings = [...(await gatherSettings(io))].sort(([a], [b]) => (a < b ? -1 : 1));
  if (json) {
    io.stdout.write(escapeJsonText(`${JSON.stringify(Object.fromEntries(settings), null, 2)}\n`));
    return 0;
  }
  const rows = settings.map(([name, { value, from }]) => [name, JSON.stringify(value), from] as const);
  const widths = [0, 1].map((column) => Math.max(0, ...rows.map((row) => row[column]!.length)));
  for (const [name, value, from] of rows)
    io.stdout.write(`${showHidden(`${name.padEnd(widths[0]!)}  ${value.padEnd(widths[1]!)}  ${from}`)}\n`);
  return 0;
}

/** A run passes them over, since the environment is no place of its own: a name that is misspelt shows here only. */
function tellUnknownVariables({ env, stderr }: Io): void {
  const known = new Set(SETTINGS.map(environmentNameOf));
  for (const name of Object.keys(env).sort())
    if (name.startsWith('BLANKCHECK_') && !known.has(name))
      stderr.write(
        `${showHidden(`blankcheck: the variable ${name} of the environment sets nothing: there is no such setting`)}\n`,
      );
}
