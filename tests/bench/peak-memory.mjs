// Prints how many bytes the process needed at its peak above its idle state with the library loaded.
import { readFileSync } from 'node:fs';
import { findBlank, preflight } from '../../dist/src/index.js';

await import('sharp');
const idle = peakBytes();
const path = process.argv[2];
const { printReady } = await preflight(
  { path, bytes: readFileSync(path) },
  { blank: findBlank('tile-ceramic-8in'), widthMm: 178 },
  { write: true },
);
if (!printReady) throw new Error('nothing was prepared');
process.stdout.write(`${peakBytes() - idle}`);

/** The kernel's own mark where there is one: the figure of the process alone is inherited from the one that started it. */
function peakBytes() {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]) * 1024;
  } catch {
    return process.resourceUsage().maxRSS * 1024;
  }
}
