import { spawnSync } from 'node:child_process';
import {
  accessSync,
  constants,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import type { TestContext } from 'vitest';

/** Second implementations that tests ask about our output, and the Debian package that brings each. */
const PACKAGES = {
  exiftool: 'libimage-exiftool-perl',
  pngcheck: 'pngcheck',
  identify: 'imagemagick',
  convert: 'imagemagick',
  tiffinfo: 'libtiff-tools',
  iccdump: 'argyll',
  transicc: 'liblcms2-utils',
  tificc: 'liblcms2-utils',
  xicclu: 'argyll',
  pdfinfo: 'poppler-utils',
  pdftoppm: 'poppler-utils',
  qpdf: 'qpdf',
  gs: 'ghostscript',
  xmllint: 'libxml2-utils',
  zip: 'zip',
  unzip: 'unzip',
  chromium: 'chromium',
  pdftotext: 'poppler-utils',
  bash: 'bash',
  zsh: 'zsh',
  fish: 'fish',
  'desktop-file-validate': 'desktop-file-utils',
  shellcheck: 'shellcheck',
  script: 'bsdutils',
  vips: 'libvips-tools',
} as const;

export type Witness = keyof typeof PACKAGES;

/** Where on the search path the program is; null where it is not. */
export function findProgram(program: Witness): string | null {
  const names = process.platform === 'win32' ? [`${program}.exe`, `${program}.cmd`] : [program];
  const paths = (process.env.PATH ?? '')
    .split(delimiter)
    .flatMap((folder) => names.map((name) => join(folder, name)));
  return (
    paths.find((path) => {
      try {
        accessSync(path, constants.X_OK);
        return true;
      } catch {
        return false;
      }
    }) ?? null
  );
}

/** True when the program can be started from the search path. */
function isInstalled(program: Witness): boolean {
  return findProgram(program) !== null;
}

/** Skips the running test, with the reason, where a witness is missing; fails it when BLANKCHECK_WITNESSES=required. */
export function requireWitness(context: TestContext, ...programs: readonly Witness[]): void {
  const missing = programs.filter((program) => !isInstalled(program));
  if (missing.length === 0) return;
  const reason = missing
    .map((program) => `${program} (Debian: ${PACKAGES[program]}) is not installed`)
    .join(', ');
  if (process.env.BLANKCHECK_WITNESSES === 'required') throw new Error(reason);
  context.skip(reason);
}

/** Files of an installed art package below a folder, sorted; skips the running test where there are none. */
export function requireCorpus(context: TestContext, folder: string, extension: string): readonly string[] {
  let paths: string[] = [];
  try {
    paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((path) => path.endsWith(extension))
      .map((path) => join(folder, path))
      .sort();
  } catch {
    // No such folder: the same as an empty one.
  }
  if (paths.length === 0) context.skip(`no ${extension} files below ${folder}`);
  return paths;
}

export interface WitnessAnswer {
  readonly status: number | null;
  readonly stdout: Buffer;
  readonly stderr: string;
}

/** Runs a witness on `input` as its standard input; `files` are laid under their names in a fresh folder, which is its working folder and is removed after. */
export function askWitness(
  program: Witness,
  args: readonly string[],
  files: Readonly<Record<string, Uint8Array | string>> = {},
  input: string | Uint8Array = '',
): WitnessAnswer {
  return inFreshFolder(files, (folder) => run(program, args, folder, input));
}

/** The same for a witness that writes a file: the bytes of `output`. Fails with what it said where it wrote none. */
export function makeByWitness(
  program: Witness,
  args: readonly string[],
  files: Readonly<Record<string, Uint8Array | string>>,
  output: string,
): Uint8Array {
  return inFreshFolder(files, (folder) => {
    const { status, stderr, stdout } = run(program, args, folder, '');
    if (status === 0) return readFileSync(join(folder, output));
    throw new Error(`${program} ended with ${status}: ${stdout.toString('utf8')} ${stderr}`);
  });
}

function run(
  program: Witness,
  args: readonly string[],
  folder: string,
  input: string | Uint8Array,
): WitnessAnswer {
  const answer = spawnSync(program, args, { cwd: folder, input, maxBuffer: 1 << 29 });
  if (answer.error) throw answer.error;
  return { status: answer.status, stdout: answer.stdout, stderr: answer.stderr.toString('utf8') };
}

function inFreshFolder<Answer>(
  files: Readonly<Record<string, Uint8Array | string>>,
  use: (folder: string) => Answer,
): Answer {
  const folder = mkdtempSync(join(tmpdir(), 'blankcheck-witness-'));
  try {
    for (const [name, bytes] of Object.entries(files)) writeFileSync(join(folder, name), bytes);
    return use(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
