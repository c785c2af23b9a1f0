import { describe, expect, it } from 'vitest';
import { findBlank, preflight, viewBareBlank } from '../../../src/index.ts';
import { annotatePicture, pictureSvg } from '../../../src/reports/picture/annotated-picture.ts';
import { makeArt } from '../../cli/art.ts';
import { askWitness, requireWitness } from '../../witness.ts';

const NAMES = ['pear.png', '</svg><script>alert(1)</script>.png', 'a\nb\u202egnp.png', '木'.repeat(300), ''];

/** Art that is too small for its blank, and reaches into its hole: several findings with and without a place. */
async function pieceCalled(path: string) {
  const blank = findBlank('tag-pet-round')!;
  const { report } = await preflight({ path, bytes: makeArt() }, { blank, fit: 'cover' });
  return { report, view: viewBareBlank({ blank }) };
}

describe('the markup of a picture', () => {
  it('is sound XML that holds no text, no font and nothing from outside, whatever the art is called', async (context) => {
    requireWitness(context, 'xmllint');
    for (const name of NAMES) {
      const svg = pictureSvg(annotatePicture(await pieceCalled(name)), (px) => px);
      expect(svg).not.toMatch(/<text|font|<script|https?:(?!\/\/www\.w3\.org\/2000\/svg)/);
      expect(askWitness('xmllint', ['--noout', '-'], {}, svg).status).toBe(0);
    }
  });

  it('numbers every finding that has a place, at that place and in the words below', async () => {
    const piece = await pieceCalled('pear.png');
    const { body } = annotatePicture(piece);
    const findings = piece.report.outcomes.flatMap((one) => (one.status === 'found' ? one.findings : []));
    const placed = findings.filter(({ place }) => place).length;
    expect(placed).toBeGreaterThan(0);
    expect(body.match(/data-finding=/g)).toHaveLength(2 * placed);
    expect(body.match(/<g class="badge/g)).toHaveLength(placed + Math.min(findings.length, 6));
  });

  it('grows with what it tells, and never wider', async () => {
    const piece = await pieceCalled('pear.png');
    const bare = annotatePicture({ ...piece, report: { ...piece.report, outcomes: [] } });
    const full = annotatePicture(piece);
    expect([bare.widthPx, full.widthPx]).toEqual([1080, 1080]);
    expect(full.heightPx).toBeGreaterThan(bare.heightPx);
  });
});
