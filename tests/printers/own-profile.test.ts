import { describe, expect, it } from 'vitest';
import { makeArt } from '../cli/art.ts';
import { runMain } from '../cli/run-main.ts';
import { makeFolder } from '../cli/temp-folder.ts';
import { COATED_REFERENCE } from '../icc/coated-reference.ts';

const RECORD = JSON.stringify({ name: 'shed', paper: 'a4', profile: 'inks.icc' });

const run = (...words: string[]) => {
  const files = { 'pear.png': makeArt(), 'shed/shed.json': RECORD, 'shed/inks.icc': COATED_REFERENCE };
  const cwd = makeFolder(files);
  const fixed = ['pear.png', '--blank', '40x40mm', '--width', '2mm', '--printer', 'shed/shed.json'];
  return runMain(['check', ...fixed, ...words], { cwd });
};
const coloursOf = async (...words: string[]) =>
  JSON.parse((await run(...words, '--json')).stdout).results[0].colours;

describe('the profile that a record of a printer names', () => {
  it('converts the file as --printer-profile does, from the folder of the record', async () => {
    const colours = await coloursOf();
    expect(colours).toMatchObject({ intent: 'relative', blackPointCompensation: true });
    expect(colours).toEqual(await coloursOf('--printer-profile', 'shed/inks.icc'));
  });

  it('takes --intent, and gives way to --printer-profile', async () => {
    expect(await coloursOf('--intent', 'perceptual')).toMatchObject({ intent: 'perceptual' });
    const { code, stderr } = await run('--printer-profile', 'other.icc');
    expect([code, stderr.includes('[no-such-file]')]).toEqual([2, true]);
  });
});
