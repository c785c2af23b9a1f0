// The script one would otherwise write for a folder: trim, resize, centre on white paper, mirror and save each picture, so
// many processes at once. It makes what the command makes (as large, with the art in its middle), and checks nothing.
import { fork } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join, parse } from 'node:path';
import { fileURLToPath } from 'node:url';

const [from, into, workers, widthPx, paperPx] = process.argv.slice(2);

if (process.send) {
  const { default: sharp } = await import('sharp');
  const [width, height] = [Number(widthPx), Number(paperPx)];
  const beside = height - width;
  const white = { background: '#ffffff' };
  process.on('message', async (name) => {
    await sharp(join(from, name))
      .trim()
      .resize({ width, height, fit: 'contain', ...white })
      .extend({ left: beside >> 1, right: beside - (beside >> 1), ...white })
      .flatten(white)
      .flop()
      .png()
      .toFile(join(into, `${parse(name).name}.png`));
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
