// Prints how many bytes the process needed at its peak above its idle state with the library loaded.
import { readFileSync } from 'node:fs';
import { findBlank, preflight } from '../../dist/src/index.js';

await import('sharp');
const idle = process.resourceUsage().maxRSS * 1024;
const path = process.argv[2];
const { printReady } = await preflight(
  { path, bytes: readFileSync(path) },
  { blank: findBlank('tile-ceramic-8in'), widthMm: 178 },
  { write: true },
);
if (!printReady) throw new Error('nothing was prepared');
process.stdout.write(`${process.resourceUsage().maxRSS * 1024 - idle}`);
