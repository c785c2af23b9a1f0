import { once } from 'node:events';
import { Worker } from 'node:worker_threads';

/**
 * Gives the memory of these bytes back now; the collector would come for them when it has time, and here the pixels are to
 * have their room. They are moved to a thread that ends. Afterwards `bytes` is empty, and so is every view of them.
 * Does nothing where they are only a part of what lies in memory, which somebody else may need.
 */
export async function letGo(bytes: Uint8Array): Promise<void> {
  const { buffer } = bytes;
  if (!(buffer instanceof ArrayBuffer) || buffer.byteLength !== bytes.byteLength) return;
  const thread = new Worker('', { eval: true, workerData: buffer, transferList: [buffer] });
  await once(thread, 'exit');
}
