import { dirname, isAbsolute, join, resolve } from 'node:path';
import { BlankcheckError, nearestIds, parseCommentedJson } from '../../src/index.ts';
import { readFileBounded, whyUnusable } from '../inputs/read-bounded.ts';
import { isTaken } from '../output/is-taken.ts';
import { OF_ONE_RUN, optionOf, SETTINGS, type Setting } from './setting-table.ts';

export const SETTINGS_FILE_NAME = 'blankcheck.config.json';
/** A file of every setting has some thousand characters; a far larger one is something else (own choice). */
const MAX_SETTINGS_BYTES = 1_000_000;
const LOOKS_LIKE = 'Settings look like { "blank": "tile-ceramic-8in", "failOn": "warning" }.';

export type SettingValue = string | boolean | readonly string[];

/**
 * The settings of a file, by name; null where there is no such file. Paths are relative to the folder that the file lies in,
 * and told relative to `cwd` where it lies there. @throws BlankcheckError `bad-config` with the line
 */
export async function readSettingsFile(
  path: string,
  cwd: string,
  signal: AbortSignal,
): Promise<ReadonlyMap<string, SettingValue> | null> {
  if (!(await isTaken(path))) return null;
  const text = await readText(path, signal);
  const json = await parseCommentedJson(text);
  if ('fault' in json) throw badConfig(path, json.fault.line, `expected ${json.fault.expected}`, LOOKS_LIKE);
  if (typeof json.value !== 'object' || json.value === null || Array.isArray(json.value))
    throw badConfig(path, 1, 'expected an object with settings in it', LOOKS_LIKE);
  const found = new Map<string, SettingValue>();
  for (const [name, value] of Object.entries(json.value)) {
    if (name === '$schema') continue;
    const line = json.lineOf([name]);
    const setting = SETTINGS.find((known) => known.name === name);
    if (!setting) throw badConfig(path, line, tellUnknown(name), tellNames(name));
    if (!isValueOf(setting, value))
      throw badConfig(
        path,
        line,
        tellExpected(setting, value),
        `See blankcheck --help for what ${optionOf(setting)} takes.`,
      );
    found.set(
      name,
      typeof value === 'string' && setting.isPath(value) ? placePath(value, dirname(path), cwd) : value,
    );
  }
  return found;
}

async function readText(path: string, signal: AbortSignal): Promise<string> {
  try {
    const bytes = await readFileBounded(path, signal, MAX_SETTINGS_BYTES);
    return new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch (cause) {
    signal.throwIfAborted();
    const why = cause instanceof BlankcheckError ? whyUnusable(cause) : 'they are no text in UTF-8';
    throw new BlankcheckError(
      'bad-config',
      `The settings in "${path}" cannot be used: ${why}.\nMend that, or give what is there another name: without it the run goes by the other settings.`,
      { cause },
    );
  }
}

/** Is the value one that the setting may have? What the words mean is judged where the option is read. */
export function isValueOf({ kind, choices }: Setting, value: unknown): value is SettingValue {
  if (kind === 'flag') return typeof value === 'boolean';
  if (kind === 'texts')
    return Array.isArray(value) && value.every((item) => typeof item === 'string' && item !== '');
  return typeof value === 'string' && value !== '' && (choices === undefined || choices.includes(value));
}

export function tellExpected({ name, kind, choices }: Setting, value: unknown): string {
  const expected =
    kind === 'flag'
      ? 'true or false'
      : kind === 'texts'
        ? 'a list of texts'
        : choices
          ? `one of ${choices.map((choice) => `"${choice}"`).join(', ')}`
          : typeof value === 'number'
            ? `a text, "${value}" in quotes,`
            : 'a text, as after the option of that name,';
  return `expected ${expected} for ${name}, received ${JSON.stringify(value)?.slice(0, 60)}`;
}

function tellUnknown(name: string): string {
  if (OF_ONE_RUN.has(name)) return `"${name}" is decided for one run, and is no setting.`;
  const [near] = nearestIds(
    name,
    SETTINGS.map((setting) => setting.name),
    1,
  );
  return `there is no setting "${name.slice(0, 60)}".${near ? ` Did you mean ${near}?` : ''}`;
}

function tellNames(name: string): string {
  return OF_ONE_RUN.has(name)
    ? `Take it out here, and type ${optionOf({ name })} where it is wanted.`
    : 'Settings have the names of the long options, as failOn for --fail-on: see blankcheck --help.';
}

function placePath(value: string, folder: string, cwd: string): string {
  return isAbsolute(value) || resolve(cwd) === folder ? value : join(folder, value);
}

function badConfig(path: string, line: number, what: string, remedy: string): BlankcheckError {
  return new BlankcheckError('bad-config', `The settings in "${path}", line ${line}: ${what}\n${remedy}`);
}
