import { stat } from 'node:fs/promises';
import { BlankcheckError, type StandIn } from '../../src/index.ts';
import { letGo } from './let-go.ts';

/**
 * The file as it is now, to be read and to stand in for what was read from it. null where it cannot be looked at, is no
 * plain file, or has a name that the decoder would take apart: libvips reads what stands in brackets at its end as options.
 */
export async function findFileAtRest(path: string): Promise<StandIn | null> {
  const stamp = path.endsWith(']') ? null : await stampOf(path);
  if (stamp === null) return null;
  return {
    path,
    letGo,
    async refuseChanged() {
      if ((await stampOf(path)) !== stamp)
        throw new BlankcheckError(
          'cannot-read',
          'The file changed, or went away, while it was read. Start again when it rests.',
        );
    },
  };
}

/** Changes with the file that the name leads to, its size, and the times of its content and its state. */
async function stampOf(path: string): Promise<string | null> {
  const stats = await stat(path, { bigint: true }).catch(() => null);
  return stats?.isFile() ? [stats.dev, stats.ino, stats.size, stats.mtimeNs, stats.ctimeNs].join() : null;
}
