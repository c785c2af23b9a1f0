import { join, resolve } from 'node:path';
import { BlankcheckError } from '../../src/index.ts';
import type { TypedOptions } from '../arguments.ts';
import type { CommandName } from '../command-table.ts';
import type { Io } from '../io.ts';
import {
  isValueOf,
  readSettingsFile,
  SETTINGS_FILE_NAME,
  type SettingValue,
  tellExpected,
} from './read-settings-file.ts';
import { environmentNameOf, SETTINGS, type Setting } from './setting-table.ts';

export interface SetValue {
  readonly value: SettingValue;
  /** `default`, the path of a file, or `environment` with the name of the variable. */
  readonly from: string;
}

type Outside = Pick<Io, 'cwd' | 'env' | 'interrupt'>;

/**
 * The settings in force, by name, each from the last of these that gives it: defaults, the user's file, the file in the
 * current folder, the environment. @throws BlankcheckError `bad-config`
 */
export async function gatherSettings({
  cwd,
  env,
  interrupt,
}: Outside): Promise<ReadonlyMap<string, SetValue>> {
  const settings = new Map<string, SetValue>();
  for (const { name, byDefault } of SETTINGS)
    if (byDefault !== undefined) settings.set(name, { value: byDefault, from: 'default' });
  for (const path of [...userFiles(env), resolve(cwd, SETTINGS_FILE_NAME)])
    for (const [name, value] of (await readSettingsFile(path, cwd, interrupt)) ?? [])
      settings.set(name, { value, from: path });
  for (const setting of SETTINGS) {
    const variable = environmentNameOf(setting);
    const text = env[variable];
    if (text)
      settings.set(setting.name, {
        value: parseVariable(setting, variable, text),
        from: `environment ${variable}`,
      });
  }
  return settings;
}

/**
 * The options of a run: what was typed, and the settings of the command that were not. The blank of a setting, and any other,
 * counts as if it had been typed.
 */
export async function applySettings(
  command: CommandName,
  options: TypedOptions,
  typed: ReadonlySet<string>,
  outside: Outside,
): Promise<TypedOptions> {
  const settings = await gatherSettings(outside);
  const set = SETTINGS.filter(({ of }) => of.includes(command)).flatMap((setting) => {
    const { name } = setting;
    const value = settings.get(name)?.value;
    const own = options[name as keyof TypedOptions];
    const settled = value === undefined ? undefined : settle(setting, value, own, typed.has(name));
    return settled === undefined ? [] : [[name, settled] as const];
  });
  return giveWay({ ...options, ...(Object.fromEntries(set) as TypedOptions) }, typed);
}

/** A setting that cannot stand beside what was typed gives way to it; typed beside it, it would be refused. */
function giveWay({ fit, extend, report, ...rest }: TypedOptions, typed: ReadonlySet<string>): TypedOptions {
  const keepsFit = typed.has('fit') || !(typed.has('width') || typed.has('height'));
  const keepsExtend = typed.has('extend') || /\bextend-edges\b/.test(rest.mend ?? '');
  const keepsReport = typed.has('report') || rest.watch !== true;
  return {
    ...rest,
    ...(fit !== undefined && keepsFit && { fit }),
    ...(extend !== undefined && keepsExtend && { extend }),
    ...(report !== undefined && keepsReport && { report }),
  };
}

/** What a setting comes to beside what the options have; undefined where they stand. */
function settle(
  { kind }: Setting,
  value: SettingValue,
  own: unknown,
  isTyped: boolean,
): SettingValue | undefined {
  // What is typed is added to a list: of several words for one name the last counts.
  if (isTyped) return Array.isArray(value) ? [...value, ...(own as readonly string[])] : undefined;
  // A flag that is off is one that was not typed, save those that are on by themselves.
  return kind === 'flag' && value === false && own !== true ? undefined : value;
}

/** Where the user's own file is; none where the environment tells no home. */
function userFiles({ XDG_CONFIG_HOME, HOME, APPDATA }: Io['env']): readonly string[] {
  const base =
    process.platform === 'win32' ? APPDATA : XDG_CONFIG_HOME || (HOME ? join(HOME, '.config') : undefined);
  return base ? [join(base, 'blankcheck', SETTINGS_FILE_NAME)] : [];
}

function parseVariable(setting: Setting, variable: string, text: string): SettingValue {
  const value =
    setting.kind === 'texts'
      ? text.split(/\s+/).filter(Boolean)
      : setting.kind === 'flag'
        ? parseFlag(text)
        : text;
  if (isValueOf(setting, value)) return value;
  throw new BlankcheckError(
    'bad-config',
    `The variable ${variable} of the environment: ${tellExpected(setting, text)}`,
  );
}

function parseFlag(text: string): boolean | string {
  return text === 'true' || text === '1' ? true : text === 'false' || text === '0' ? false : text;
}
