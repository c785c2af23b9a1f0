// The script one would otherwise write: trim, resize, mirror, save. With `exact` the trim is that of line art.
import sharp from 'sharp';

const [input, output, way] = process.argv.slice(2);
await sharp(input)
  .trim(way === 'exact' ? { lineArt: true } : {})
  .resize(2102)
  .flop()
  .png()
  .toFile(output);
