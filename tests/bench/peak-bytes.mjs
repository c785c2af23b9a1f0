import { readFileSync } from 'node:fs';

/** The kernel's own mark where there is one: the figure of the process alone is inherited from the one that started it. */
export function peakBytes() {
  try {
    return Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]) * 1024;
  } catch {
    return process.resourceUsage().maxRSS * 1024;
  }
}
