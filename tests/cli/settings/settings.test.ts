import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import type { TypedOptions } from '../../../cli/arguments.ts';
import { applySettings } from '../../../cli/settings/gather-settings.ts';
import { SETTINGS } from '../../../cli/settings/setting-table.ts';
import { settingsSchema } from '../../../cli/settings/settings-schema.ts';
import { makeArt } from '../art.ts';
import { runMain } from '../run-main.ts';
import { makeFolder } from '../temp-folder.ts';

const CONFIG = 'blankcheck.config.json';
const SCHEMA = new URL('../../../seeds/schema/config.schema.json', import.meta.url);

const config = async (files: Record<string, string>, env: Record<string, string> = {}) => {
  const cwd = makeFolder(files);
  const run = await runMain(['config', '--json'], { cwd, env: { HOME: cwd, ...env } });
  return { ...run, cwd, settings: run.code === 0 ? JSON.parse(run.stdout) : null };
};

describe('blankcheck config', () => {
  it('says of each setting which of the four it comes from, the later before the earlier', async () => {
    const { settings, cwd } = await config(
      {
        [`.config/blankcheck/${CONFIG}`]: '{ "ppi": "310", "bleed": "4mm", "safe": "6mm" }',
        [CONFIG]: '{ // of this stall\n "ppi": "320", "safe": "7mm", }',
      },
      { BLANKCHECK_SAFE: '8mm' },
    );
    expect(settings).toEqual({
      bleed: { value: '4mm', from: join(cwd, '.config/blankcheck', CONFIG) },
      failOn: { value: 'error', from: 'default' },
      ppi: { value: '320', from: join(cwd, CONFIG) },
      safe: { value: '8mm', from: 'environment BLANKCHECK_SAFE' },
    });
  });

  it.each([
    ['{ "ppi": 300 }', 1],
    ['{\n "blnk": "tile-ceramic-8in" }', 2],
    ['{\n\n "fit": "stretch" }', 3],
    ['{ "quiet": "yes" }', 1],
    ['{ "limit": "maxPixels=1" }', 1],
    ['{ "force": true }', 1],
    ['{ "ppi": "" }', 1],
    ['{ "ppi": "300", "ppi": "310" }', 1],
    ['[]', 1],
    ['{', 1],
    ['', 1],
  ])('refuses %s and names the line', async (text, line) => {
    const { code, stderr, stdout } = await config({ [CONFIG]: text });
    expect([code, stdout]).toEqual([2, '']);
    expect(stderr).toContain('[bad-config]');
    expect(stderr).toContain(`line ${line}`);
    // This very command was called, or would end as this one did.
    expect(stderr).not.toContain('blankcheck config');
  });

  it('names variables that set nothing, since a run passes them over', async () => {
    const { stderr, settings } = await config({}, { BLANKCHECK_FORCE: '1', BLANKCHECK_PPI: '310' });
    expect(stderr).toContain('BLANKCHECK_FORCE');
    expect(stderr).not.toContain('BLANKCHECK_PPI');
    expect(settings).toMatchObject({ ppi: { value: '310' } });
  });

  it('refuses a variable that holds no such value', async () => {
    expect((await config({}, { BLANKCHECK_FIT: 'stretch' })).code).toBe(2);
    expect(
      (await config({}, { BLANKCHECK_QUIET: '1', BLANKCHECK_LIMIT: 'maxPixels=1 maxBytes=2' })).settings,
    ).toMatchObject({
      quiet: { value: true },
      limit: { value: ['maxPixels=1', 'maxBytes=2'] },
    });
  });
});

describe('settings of a run', () => {
  const run = async (settings: object, words: readonly string[], env: Record<string, string> = {}) => {
    const cwd = makeFolder({ 'basil.png': makeArt(), [CONFIG]: JSON.stringify(settings) });
    const { stdout, code, stderr } = await runMain(['check', 'basil.png', '--json', ...words], { cwd, env });
    return code === 2 ? { code, stderr } : { code, ...JSON.parse(stdout).results[0] };
  };

  it('count as if they were typed, and what is typed counts before them', async () => {
    const settings = { blank: '60x60mm', width: '2mm', failOn: 'advice' };
    expect(await run(settings, [])).toMatchObject({ blank: { id: '60x60mm' }, placementMm: { width: 2 } });
    expect(await run(settings, ['--width', '1mm'])).toMatchObject({ placementMm: { width: 1 } });
    expect(await run(settings, [], { BLANKCHECK_WIDTH: '1.5mm' })).toMatchObject({
      placementMm: { width: 1.5 },
    });
  });

  it('name files beside the file that they stand in', async () => {
    const tile = { id: 'shed-tile', name: 'Tile', outline: { shape: 'rect', widthMm: 60, heightMm: 60 } };
    const cwd = makeFolder({
      'basil.png': makeArt(),
      '.config/blankcheck/tile.json': JSON.stringify({ ...tile, bleedMm: 3, safeMm: 2, surface: 'first' }),
      [`.config/blankcheck/${CONFIG}`]: '{ "blank": "tile.json", "width": "2mm" }',
    });
    const words = ['check', 'basil.png', '--json'];
    const { stdout, stderr } = await runMain(words, { cwd, env: { HOME: cwd } });
    expect(stderr).not.toContain('[unknown-blank]');
    expect(JSON.parse(stdout).results[0].blank.id).toBe('shed-tile');
  });

  it('decide the exit code, unless it is typed', async () => {
    const settings = { blank: '60x60mm', width: '3mm', failOn: 'advice' };
    expect((await run(settings, [])).code).toBe(1);
    expect((await run(settings, ['--fail-on', 'error'])).code).toBe(0);
  });

  it('are judged as the option is, and named where nobody typed what is refused', async () => {
    const wrong = { blank: '60x60', width: '2mm', ppi: '310' };
    expect(await run(wrong, [])).toMatchObject({
      code: 2,
      stderr: expect.stringMatching(/set: blank "60x60", by .*blankcheck\.config\.json\n$/),
    });
    expect((await run(wrong, ['--blank', '60x61'])).stderr).not.toContain(CONFIG);
    expect((await run({ blank: '60x60mm' }, [], { BLANKCHECK_WIDTH: '2' })).stderr).toContain(
      'BLANKCHECK_WIDTH',
    );
  });

  it('of a report name a file beside theirs, and give way to --watch, which has no end to report', async () => {
    const cwd = makeFolder({ [`.config/blankcheck/${CONFIG}`]: '{ "report": "beds.html" }' });
    const outside = { cwd, env: { HOME: cwd }, interrupt: new AbortController().signal };
    const settle = (options: TypedOptions) =>
      applySettings('check', options, new Set(Object.keys(options)), outside);
    expect((await settle({})).report).toBe(join(cwd, '.config/blankcheck/beds.html'));
    expect((await settle({ watch: true })).report).toBeUndefined();
    expect((await settle({ watch: true, report: 'typed.html' })).report).toBe('typed.html');
  });
});

describe('the schema of settings', () => {
  it('is what the table of options gives, and holds what the reader holds', () => {
    const text = `${JSON.stringify(settingsSchema(), null, 2)}\n`;
    if (process.env.UPDATE === '1') writeFileSync(SCHEMA, text);
    expect(readFileSync(SCHEMA, 'utf8')).toBe(text);
    const validate = new Ajv2020().compile(settingsSchema());
    expect(validate({ $schema: 'x', blank: 'tile-ceramic-8in', quiet: true, limit: ['maxPixels=1'] })).toBe(
      true,
    );
    for (const wrong of [{ blnk: 'x' }, { quiet: 'yes' }, { fit: 'stretch' }, { ppi: 300 }, { force: true }])
      expect(validate(wrong)).toBe(false);
  });

  it('has no option twice', () => {
    expect(new Set(SETTINGS.map(({ name }) => name)).size).toBe(SETTINGS.length);
  });
});
