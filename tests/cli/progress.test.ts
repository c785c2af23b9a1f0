import { describe, expect, it } from 'vitest';
import { createProgress, type ProgressOptions } from '../../cli/progress.ts';

function watch({ columns = 60, ...options }: Omit<ProgressOptions, 'nowMs'> & { readonly columns?: number }) {
  let ms = 0;
  const written: string[] = [];
  const stderr = { isTTY: options.isScreen, columns, write: (text: string) => void written.push(text) };
  const progress = createProgress(stderr, { ...options, nowMs: () => ms });
  const pass = (by: number) => {
    ms += by;
  };
  const run = (artworks: number, msEach: number) => {
    progress.begin(artworks);
    for (let done = 0; done < artworks; done += 1) {
      progress.started(`beds/${done}.png`);
      ms += msEach;
      progress.done();
    }
    progress.end();
  };
  return { progress, written, run, pass };
}

describe('progress', () => {
  it('is a bar on a terminal: count, rate, time left, current file, and it goes away', () => {
    const { run, written } = watch({ quiet: false, isScreen: true });
    run(4, 500);
    expect(written[0]).toBe('\r\x1b[2K[#####...............] 1 of 4, 2.0 a second, 2 s left  beds');
    expect(written.at(-1)).toBe('\r\x1b[2K');
    for (const text of written) expect(text.replace('\r\x1b[2K', '').length).toBeLessThan(60);
  });

  it('makes room for what else is told', () => {
    const { progress, written, pass } = watch({ quiet: false, isScreen: true });
    progress.begin(9);
    pass(200);
    progress.done();
    progress.stderr.write('READY\n');
    expect(written.slice(-2)).toEqual(['\r\x1b[2K', 'READY\n']);
  });

  it('is a line every ten seconds in a pipe, and none for a short run', () => {
    const short = watch({ quiet: false, isScreen: false });
    short.run(9, 1000);
    expect(short.written).toEqual([]);
    const long = watch({ quiet: false, isScreen: false });
    long.run(60, 1000);
    expect(long.written).toHaveLength(6);
    expect(long.written[0]).toBe('blankcheck: 10 of 60, 1.0 a second, 50 s left\n');
  });

  it('is there while folders are looked through', () => {
    const { progress, written, pass } = watch({ quiet: false, isScreen: true });
    pass(150);
    progress.looking(4000);
    expect(written.join('')).toContain('4000');
  });

  it('is nothing when quiet, and of one artwork alone', () => {
    const quiet = watch({ quiet: true, isScreen: true });
    quiet.run(60, 1000);
    const single = watch({ quiet: false, isScreen: true });
    single.progress.begin(1);
    single.pass(5000);
    single.progress.done();
    expect([...quiet.written, ...single.written]).toEqual([]);
  });

  it('cannot be steered by a name', () => {
    const { progress, written, pass } = watch({ quiet: false, isScreen: true });
    progress.begin(2);
    pass(500);
    progress.started('a\x1b[31mb.png');
    expect(written.join('').replaceAll('\x1b[2K', '')).not.toContain('\x1b');
  });

  it('keeps to its line with wide names too: two columns each, and no half of a character', () => {
    const { progress, written, pass } = watch({ quiet: false, isScreen: true });
    progress.begin(2);
    pass(500);
    progress.done();
    pass(500);
    progress.started('花'.repeat(40));
    const line = written.at(-1)!.replace('\r\x1b[2K', '');
    const name = line.slice(line.indexOf('花'));
    const columns = line.length + name.length;
    expect(name).toBe('花'.repeat(name.length));
    expect(columns).toBeGreaterThan(57);
    expect(columns).toBeLessThan(60);
    pass(500);
    progress.started('🍅'.repeat(40));
    expect(written.at(-1)).toMatch(/(?:🍅)+$/u);
  });

  it.each([
    [60, '[#...................] 1 of 13, 2.0 a second, 6 s left'],
    [44, '1 of 13, 2.0 a second, 6 s left'],
    [30, '1 of 13, 2.0 a second'],
    [12, '1 of 13'],
  ])('in %i columns leaves out what does not fit, and cuts no number', (columns, line) => {
    const { progress, written, pass } = watch({ quiet: false, isScreen: true, columns });
    progress.begin(13);
    pass(500);
    progress.done();
    expect(written).toEqual([`\r\x1b[2K${line}`]);
  });
});
