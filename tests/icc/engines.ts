import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { TestContext } from 'vitest';
import type { Intent } from '../../src/icc/profile.ts';
import { askWitness, requireWitness } from '../witness.ts';

/** Where the Debian packages icc-profiles-free, colord-data and argyll-ref lay their profiles. */
const FOLDERS = ['/usr/share/color/icc', '/usr/share/color/argyll/ref'];
const PACKAGES = 'icc-profiles-free, colord-data and argyll-ref';

const INTENT_NUMBER: Readonly<Record<Intent, number>> = {
  perceptual: 0,
  relative: 1,
  saturation: 2,
  absolute: 3,
};
const INTENT_LETTER: Readonly<Record<Intent, string>> = {
  perceptual: 'p',
  relative: 'r',
  saturation: 's',
  absolute: 'a',
};

/** Every profile file of the Debian packages, and both engines; skips, or fails where witnesses are required. */
export function requireEngines(context: TestContext): readonly string[] {
  requireWitness(context, 'transicc', 'xicclu');
  const paths = FOLDERS.flatMap(listProfiles);
  if (paths.length > 0) return paths;
  const reason = `no profiles of ${PACKAGES} are installed`;
  if (process.env.BLANKCHECK_WITNESSES === 'required') throw new Error(reason);
  return context.skip(reason);
}

function listProfiles(folder: string): string[] {
  try {
    return (
      readdirSync(folder, { recursive: true, encoding: 'utf8' })
        // Other packages lay theirs in folders of their own: the figures of these tests are not about them.
        .filter((path) => /\.ic[cm]$/i.test(path) && !path.startsWith('ghostscript/'))
        .map((path) => join(folder, path))
        .sort()
    );
  } catch {
    return [];
  }
}

export interface LcmsQuestion {
  /** A path, a name in `files`, or one of its built-in profiles (`*Lab2`, `*sRGB`). */
  readonly from: string;
  readonly to: string;
  readonly intent: Intent;
  readonly blackPointCompensation?: boolean;
  readonly files?: Readonly<Record<string, Uint8Array>>;
}

/** What Little CMS makes of the colours, in its own scale: RGB and gray 0…255, ink and XYZ in percent, Lab as it is. */
export function askLcms(question: LcmsQuestion, colours: readonly (readonly number[])[]): number[][] {
  const { from, to, intent, blackPointCompensation = false, files = {} } = question;
  const args = [
    '-n',
    `-i${from}`,
    `-o${to}`,
    `-t${INTENT_NUMBER[intent]}`,
    ...(blackPointCompensation ? ['-b'] : []),
  ];
  return readAnswer(colours, askWitness('transicc', args, files, writeColours(colours)));
}

/** What Argyll makes of the colours: device values 0…1, Lab as it is. */
export function askArgyll(
  profile: string,
  direction: 'forwards' | 'backwards',
  intent: Intent,
  colours: readonly (readonly number[])[],
  files: Readonly<Record<string, Uint8Array>> = {},
): number[][] {
  const args = [
    '-v0',
    direction === 'forwards' ? '-ff' : '-fb',
    `-i${INTENT_LETTER[intent]}`,
    '-pl',
    profile,
  ];
  return readAnswer(colours, askWitness('xicclu', args, files, writeColours(colours)));
}

function writeColours(colours: readonly (readonly number[])[]): string {
  return colours.map((colour) => `${colour.map((value) => value.toFixed(9)).join(' ')}\n`).join('');
}

/** One line of numbers for each colour, or the witness did not understand. */
function readAnswer(
  colours: readonly (readonly number[])[],
  { stdout, stderr }: { readonly stdout: Buffer; readonly stderr: string },
): number[][] {
  const lines = stdout.toString('utf8').trimEnd().split('\n');
  // xicclu marks clipped colours behind the numbers.
  const numbers = lines.map((line) => line.replace('(clip)', '').trim().split(/\s+/).map(Number));
  if (lines.length !== colours.length || numbers.flat().some((number) => !Number.isFinite(number)))
    throw new Error(`the witness answered ${stdout.toString('utf8').slice(0, 200)} ${stderr.slice(-200)}`);
  return numbers;
}
