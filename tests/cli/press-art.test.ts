import { describe, expect, it } from 'vitest';
import { SIGNAL_WORDS } from '../../src/catalogue/press-records.ts';
import { CAUTIONS } from '../../src/catalogue/seed-data.ts';
import { makeArt } from './art.ts';
import { runMain } from './run-main.ts';
import { listFiles, makeFolder, readText } from './temp-folder.ts';

/** Opaque and square. */
const ART = makeArt([200, 40, 40], 400);
const WORDS = [
  'press',
  'tile-ceramic-8in',
  '--art',
  'shed.png',
  '--width',
  '100mm',
  '--offset',
  '10mm,-20mm',
];

describe('press --art', () => {
  it('tells where the piece lies: 100 mm in the middle of 200 mm, moved by 10 and -20 mm', async () => {
    const cwd = makeFolder({ 'shed.png': ART });
    const { code, stdout } = await runMain([...WORDS, '--json'], { cwd });
    expect(code).toBe(0);
    expect(JSON.parse(stdout).piece).toMatchObject({
      artwork: { path: 'shed.png' },
      blank: { widthMm: 200, heightMm: 200 },
      placementMm: { x: 60, y: 30, width: 100, height: 100 },
      roomMm: { left: 60, top: 30, right: 40, bottom: 70 },
    });
  });

  it('says the same in words and on the page, with its picture, and writes nothing else', async () => {
    const cwd = makeFolder({ 'shed.png': ART });
    const { stdout } = await runMain([...WORDS, '--page', 'card.html'], { cwd });
    const page = readText(cwd, 'card.html');
    for (const text of [stdout.replace(/\n +/g, ' '), page]) {
      expect(text).toContain(
        'left 60 mm (2.36 in), right 40 mm (1.57 in), top 30 mm (1.18 in), bottom 70 mm (2.76 in)',
      );
      expect(text).toContain('100 mm (3.94 in) from the left and right');
    }
    expect(page.match(/<image /g)).toHaveLength(1);
    expect(listFiles(cwd)).toEqual(['card.html', 'shed.png']);
  });

  it('tells art that hangs over the edge as such', async () => {
    const cwd = makeFolder({ 'shed.png': ART });
    const { stdout } = await runMain(['press', 'tile-ceramic-8in', '--art', 'shed.png', '--fit', 'cover'], {
      cwd,
    });
    expect(stdout.replace(/\n +/g, ' ')).toContain('left 3 mm (0.12 in) over the edge');
  });

  it('of a round body measures on its paper', async () => {
    const cwd = makeFolder({ 'shed.png': ART });
    const { stdout } = await runMain(['press', 'mug-11oz', '--art', 'shed.png', '--json'], { cwd });
    const { blank, placementMm, roomMm } = JSON.parse(stdout).piece;
    expect(roomMm.left + placementMm.width + roomMm.right).toBeCloseTo(blank.widthMm, 2);
    expect(roomMm.top + placementMm.height + roomMm.bottom).toBeCloseTo(blank.heightMm, 2);
  });

  it('never replaces the art, even by force', async () => {
    const cwd = makeFolder({ 'shed.png': ART });
    const { code } = await runMain([...WORDS, '--page', 'shed.png', '--force'], { cwd });
    expect([code, listFiles(cwd)]).toEqual([1, ['shed.png']]);
    expect(readText(cwd, 'shed.png')).toBe(Buffer.from(ART).toString());
  });

  it('refuses what is no art to press: a file that cannot be read is 1, a wrong command 2', async () => {
    const cwd = makeFolder({ 'shed.png': ART, 'torn.png': ART.subarray(0, 90) });
    await runMain(['shed.png', '--blank', 'tile-ceramic-8in', '--width', '20mm'], { cwd });
    const made = 'print-ready/shed.tile-ceramic-8in.png';
    for (const [args, code, error] of [
      [['--art', 'torn.png'], 1, 'damaged'],
      [['--art', 'none.png'], 2, 'no-such-file'],
      [['--art', made], 2, 'bad-option'],
      [['--width', '20mm'], 2, 'bad-option'],
    ] as const) {
      const run = await runMain(['press', 'tile-ceramic-8in', ...args], { cwd });
      expect([args, run.code, run.stdout]).toEqual([args, code, '']);
      expect(run.stderr).toContain(`[${error}]`);
    }
  });
});

describe('the signal words of cautions', () => {
  it('stand before each on the card, the gravest first, with what they mean', async () => {
    const { stdout } = await runMain(['press', 'tumbler-20oz-straight'], { cwd: makeFolder() });
    const told = [...stdout.matchAll(/^ {2}- (DANGER|WARNING|CAUTION|NOTICE), /gm)].map(([, word]) => word!);
    expect(told.length).toBeGreaterThan(5);
    expect(told[0]).toBe('DANGER');
    const pressing = told.slice(0, told.indexOf('NOTICE'));
    expect(pressing.length).toBeGreaterThan(3);
    expect(stdout.replace(/\n/g, ' ')).toContain('ISO 3864-2');
    expect(new Set(CAUTIONS.map(({ signalWord }) => signalWord))).toEqual(new Set(SIGNAL_WORDS));
  });
});
