// npm run kill: ends runs over a folder with SIGKILL at random moments, and holds what they leave against a run that was let
// be: nothing but whole files under final names, and a rerun that completes the folder. Figures go to standard output.
import { spawn, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const KILLS = Number(process.argv[2] ?? 200);
/** Few and small: a kill has as many moments to strike in, and 200 of them take minutes, not a quarter of an hour. */
const ARTWORKS = 6;
const TELL_EVERY = 10;
const bin = fileURLToPath(new URL('../../dist/cli/bin.js', import.meta.url));
const cwd = mkdtempSync(join(tmpdir(), 'blankcheck-kill-'));
const words = (out) => [bin, 'beds', '--blank', '60x60mm', '--width', '40mm', '--out', out, '--quiet'];
const filesIn = (folder) => readdirSync(folder).filter((name) => !name.startsWith('.'));
const tempsIn = (folder) => readdirSync(folder).filter((name) => name.endsWith('.tmp'));

mkdirSync(join(cwd, 'beds'));
for (let index = 0; index < ARTWORKS; index += 1)
  await sharp({
    create: { width: 350, height: 250, channels: 4, background: { r: 20 * index, g: 120, b: 60, alpha: 1 } },
  })
    .png()
    .toFile(join(cwd, 'beds', `${index}.png`));

const began = performance.now();
const whole = spawnSync(process.execPath, words('whole'), { cwd });
const runMs = performance.now() - began;
const expected = new Map(
  filesIn(join(cwd, 'whole')).map((name) => [name, readFileSync(join(cwd, 'whole', name))]),
);
if (whole.status !== 0 || expected.size !== ARTWORKS)
  throw new Error(`the run that was let be: ${whole.stderr}`);

let state = 20260;
const chance = () => {
  state = (state * 48271) % 2147483647;
  return state / 2147483647;
};
const seconds = () => Math.round((performance.now() - began) / 1000);
const figures = { kills: 0, ended: 0, temps: 0, torn: 0, incomplete: 0, left: 0 };
function beginAnew() {
  rmSync(join(cwd, 'out'), { recursive: true, force: true });
  mkdirSync(join(cwd, 'out'));
}
beginAnew();
while (figures.kills < KILLS) {
  const child = spawn(process.execPath, words('out'), { cwd, stdio: 'ignore' });
  const closed = new Promise((resolve) => child.on('close', resolve));
  await wait(chance() * runMs * 1.1);
  const struck = child.exitCode === null;
  child.kill('SIGKILL');
  await closed;
  for (const name of filesIn(join(cwd, 'out')))
    if (!expected.get(name)?.equals(readFileSync(join(cwd, 'out', name)))) figures.torn += 1;
  // What had ended before is no kill: how long a run takes varies with what else the machine does.
  if (!struck) {
    figures.ended += 1;
    beginAnew();
    continue;
  }
  figures.kills += 1;
  figures.temps += tempsIn(join(cwd, 'out')).length;
  if (figures.kills % TELL_EVERY === 0)
    console.log(
      `${figures.kills} of ${KILLS} kills, ${seconds()} s; ${figures.torn} torn, ${figures.incomplete} incomplete`,
    );
  // Every few kills the folder is completed, and begun anew.
  if (figures.kills % 4 !== 0) continue;
  const rerun = spawnSync(process.execPath, words('out'), { cwd });
  if (rerun.status !== 0 || filesIn(join(cwd, 'out')).length !== ARTWORKS) figures.incomplete += 1;
  figures.left += tempsIn(join(cwd, 'out')).length;
  beginAnew();
}
rmSync(cwd, { recursive: true });
console.log({ ...figures, seconds: seconds() });
if (figures.torn + figures.incomplete + figures.left > 0) process.exitCode = 1;
