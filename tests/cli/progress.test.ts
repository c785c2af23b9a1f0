import { describe, expect, it } from 'vitest';
import { createProgress, type ProgressOptions } from '../../cli/progress.ts';

function watch(options: Omit<ProgressOptions, 'nowMs'>) {
  let ms = 0;
  const written: string[] = [];
  const stderr = { isTTY: options.isScreen, columns: 60, write: (text: string) => void written.push(text) };
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
});
