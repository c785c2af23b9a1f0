import { BlankcheckError } from '../../src/index.ts';
import type { CommandName } from '../command-table.ts';
import type { Io } from '../io.ts';
import { gatherSettings } from './gather-settings.ts';
import { optionOf, SETTINGS } from './setting-table.ts';

/**
 * A refusal of what was asked for, with the settings that it names or whose value it names, and where they stand: nobody
 * typed them, and whoever looks for the fault in what was typed does not find it.
 */
export async function nameSettings(
  error: BlankcheckError,
  command: CommandName,
  typed: ReadonlySet<string>,
  outside: Pick<Io, 'cwd' | 'env' | 'interrupt'>,
): Promise<BlankcheckError> {
  // It names its place itself.
  if (error.code === 'bad-config') return error;
  const settings = await gatherSettings(outside);
  const told = SETTINGS.filter(({ name, of }) => of.includes(command) && !typed.has(name)).flatMap(
    (setting) => {
      const set = settings.get(setting.name);
      if (set === undefined || set.from === 'default') return [];
      const { value, from } = set;
      const names = [optionOf(setting), ...[value].flat().map((text) => `"${text}"`)];
      return names.some((name) => isNamed(error.message, name))
        ? [`Not typed but set: ${setting.name} ${JSON.stringify(value)}, by ${from}`]
        : [];
    },
  );
  if (told.length === 0) return error;
  return new BlankcheckError(error.code, [error.message, ...told].join('\n'), { cause: error });
}

/** `--out` is not named by `--outline`. */
function isNamed(message: string, name: string): boolean {
  const [, ...after] = message.split(name);
  return after.some((rest) => !/^[\w-]/.test(rest));
}
