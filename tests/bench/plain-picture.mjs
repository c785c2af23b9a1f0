/**
 * What one would otherwise write for each picture: trim, resize, centre on white paper, mirror, save. It makes what the
 * command makes (as large, with the art in its middle), and checks nothing.
 */
export async function preparePlainly(sharp, path, output, { widthPx, paperPx }) {
  const beside = paperPx - widthPx;
  const white = { background: '#ffffff' };
  await sharp(path)
    .trim()
    .resize({ width: widthPx, height: paperPx, fit: 'contain', ...white })
    .extend({ left: beside >> 1, right: beside - (beside >> 1), ...white })
    .flatten(white)
    .flop()
    .png()
    .toFile(output);
}
