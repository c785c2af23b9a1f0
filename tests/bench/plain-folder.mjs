// The plain script over a folder, so many processes at once.
import { fork } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join, parse } from 'node:path';
import { fileURLToPath } from 'node:url';
import { preparePlainly } from './plain-picture.mjs';

const [from, into, workers, widthPx, paperPx] = process.argv.slice(2);

if (process.send) {
  const { default: sharp } = await import('sharp');
  const size = { widthPx: Number(widthPx), paperPx: Number(paperPx) };
  process.on('message', async (name) => {
    await preparePlainly(sharp, join(from, name), join(into, `${parse(name).name}.png`), size);
    process.send('done');
  });
  process.send('ready');
} else {
  const names = readdirSync(from);
  for (let i = 0; i < Number(workers); i += 1) {
    const child = fork(fileURLToPath(import.meta.url), process.argv.slice(2));
    child.on('message', () => {
      const name = names.shift();
      if (name === undefined) child.kill();
      else child.send(name);
    });
  }
}
