import { describe, expect, it } from 'vitest';
import { findBlank, type PrintRequest, preflight } from '../src/index.ts';
import { demoArtworks, paintDemo } from './demo-art.ts';

const REQUESTS: Readonly<Record<string, Omit<PrintRequest, 'blank'>>> = {
  'shed-tile': { widthMm: 177.8 },
  'coaster-leaves': { fit: 'cover' },
};
/** Notes that belong to the picture: clear margins are trimmed, a pattern that covers is cut, lavender is vivid, stems are thin. */
const HARMLESS = [
  'transparent-margin/trimmed',
  'print-size/cut',
  'gamut/out-of-gamut',
  'lip-band/near-rim',
  'thin-detail/thin-strokes',
  'thin-detail/thin-gaps',
];

describe.each(demoArtworks)('demo art $name', { timeout: 60_000 }, (artwork) => {
  it('is drawn alike twice, without fonts and without anything from outside', () => {
    const svg = artwork.draw().toSvg();
    expect(artwork.draw().toSvg()).toBe(svg);
    expect(svg).not.toMatch(/<text|<image|href|font|NaN|undefined/);
  });

  it('is ready for its blank, with nothing to mend', async () => {
    const source = { path: `${artwork.name}.png`, bytes: await (await paintDemo(artwork)).toBuffer() };
    const request = { ...REQUESTS[artwork.name], blank: findBlank(artwork.blank)! };
    const { report } = await preflight(source, request, { write: false });
    const found = report.outcomes.flatMap((outcome) =>
      outcome.status === 'found' ? outcome.findings.map(({ code }) => `${outcome.check}/${code}`) : [],
    );
    expect(found.filter((code) => !HARMLESS.includes(code))).toEqual([]);
    expect(report.status).toBe('ready');
  });
});
