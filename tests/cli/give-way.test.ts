import { describe, expect, it } from 'vitest';
import { giveWayTo } from '../../cli/give-way.ts';

describe('giveWayTo', () => {
  it('rests each 50 ms of work, and sees an interrupt that came meanwhile', async () => {
    const interrupt = new AbortController();
    let now = 0;
    const giveWay = giveWayTo(interrupt.signal, () => now);
    now = 49;
    expect(giveWay()).toBeUndefined();
    now = 50;
    const rest = giveWay();
    expect(rest).toBeInstanceOf(Promise);
    await rest;
    now = 99;
    expect(giveWay()).toBeUndefined();
    now = 100;
    // What is waiting for its turn while work goes on: a signal of the system is handed over like this.
    setImmediate(() => interrupt.abort('stop'));
    await expect(giveWay()).rejects.toBe('stop');
  });
});
