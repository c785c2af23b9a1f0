import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRestingFiles, REST_MS } from '../../../cli/watch/resting-files.ts';

const one = (bytes: number, mtimeMs = 1) => new Map([['bean.png', { bytes, mtimeMs }]]);

describe('files that rest', () => {
  it('are given once, when size and time have stood still for two seconds', () => {
    const files = createRestingFiles();
    const given = [0, 1999, 2000, 2001, 9000].map((ms) => files.look(one(5), ms).length);
    expect(given).toEqual([0, 0, 1, 0, 0]);
  });

  it('begin to rest anew when size or time changes, and when they were away', () => {
    const files = createRestingFiles();
    const looks = [
      [one(5), 0],
      [one(6), 1500],
      [one(6, 2), 3000],
      [one(6, 2), 4999],
      [one(6, 2), 5000],
      [new Map(), 6000],
      [one(6, 2), 7000],
      [one(6, 2), 9000],
    ] as const;
    expect(looks.map(([now, ms]) => files.look(now, ms).length)).toEqual([0, 0, 0, 0, 1, 0, 0, 1]);
  });

  it('are never given within two seconds of a change, and always at the end of a rest', () => {
    const step = fc.record({ ms: fc.integer({ min: 1, max: 1500 }), grows: fc.boolean() });
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const files = createRestingFiles();
        let [now, bytes, changed, given] = [0, 1, 0, false];
        files.look(one(bytes), now);
        for (const { ms, grows } of steps) {
          now += ms;
          if (grows) [bytes, changed, given] = [bytes + 1, now, false];
          const due = !given && now - changed >= REST_MS;
          expect(files.look(one(bytes), now)).toEqual(due ? ['bean.png'] : []);
          given ||= due;
        }
      }),
      { seed: 7 },
    );
  });
});
