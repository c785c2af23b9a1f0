import { describe, expect, it } from 'vitest';
import { retryWhileBusy, WINDOWS_WAITS_MS } from '../../../cli/output/retry-while-busy.ts';

/** An action that fails so many times with the code before it gives 'done'. */
function failing(times: number, code: string) {
  let calls = 0;
  return {
    calls: () => calls,
    action: async () => {
      calls += 1;
      if (calls <= times) throw Object.assign(new Error(code), { code });
      return 'done';
    },
  };
}

describe('retryWhileBusy', () => {
  it.each(['EPERM', 'EACCES', 'EBUSY'])('tries again after %s', async (code) => {
    const busy = failing(3, code);
    expect(await retryWhileBusy(busy.action, [0, 0, 0])).toBe('done');
    expect(busy.calls()).toBe(4);
  });

  it('gives up with the last failure', async () => {
    const busy = failing(9, 'EBUSY');
    await expect(retryWhileBusy(busy.action, [0, 0])).rejects.toThrow('EBUSY');
    expect(busy.calls()).toBe(3);
  });

  it('does not try again what waiting cannot mend', async () => {
    const full = failing(1, 'ENOSPC');
    await expect(retryWhileBusy(full.action, [0, 0])).rejects.toThrow('ENOSPC');
    expect(full.calls()).toBe(1);
  });

  it('waits about half a second on Windows, in eight steps', () => {
    expect(WINDOWS_WAITS_MS).toHaveLength(8);
    expect(WINDOWS_WAITS_MS.reduce((sum, ms) => sum + ms)).toBe(485);
  });
});
