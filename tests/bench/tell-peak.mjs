import { writeFileSync } from 'node:fs';
import { peakBytes } from './peak-bytes.mjs';

// Imported before a program: at its end, writes the bytes that its process held at its peak into the file PEAK_FILE.
process.on('exit', () => writeFileSync(process.env.PEAK_FILE, String(peakBytes())));
