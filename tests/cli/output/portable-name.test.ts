import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { portableName } from '../../../cli/output/portable-name.ts';

describe('portableName', () => {
  it.each([
    ['pear', 'pear.tile.png'],
    ['pear.v2', 'pear.v2.tile.png'],
    ['poirier é 木', 'poirier é 木.tile.png'],
    ['a<b>c:d"e/f\\g|h?i*j', 'a_b_c_d_e_f_g_h_i_j.tile.png'],
    ['bell\u0007 and\nline', 'bell_ and_line.tile.png'],
    ['.hidden', '_hidden.tile.png'],
    [' spaced', '_spaced.tile.png'],
    ['CON', 'CON_.tile.png'],
    ['com1 .x', 'com1_ .x.tile.png'],
    ['lpt².x', 'lpt²_.x.tile.png'],
    ['console', 'console.tile.png'],
    ["it's 100% & ^ok^", "it's 100% & ^ok^.tile.png"],
  ])('%j becomes %j', (art, name) => expect(portableName(art, 'tile.png')).toBe(name));

  it('cleans the id of a blank too, which may come from a file', () => {
    expect(portableName('pear', '../tile.png')).toBe('pear..._tile.png');
  });

  it('shortens what is over-long at a whole character, and tells like ones apart', () => {
    const long = '木'.repeat(100);
    const [a, b] = [portableName(`${long}a`, 'tile.png'), portableName(`${long}b`, 'tile.png')];
    expect(Buffer.byteLength(a)).toBeLessThanOrEqual(143);
    expect(a).toMatch(/^木{41}~[0-9a-f]{8}\.tile\.png$/);
    expect(b).toMatch(/^木{41}~[0-9a-f]{8}\.tile\.png$/);
    expect(a).not.toBe(b);
    const fits = 'x'.repeat(143 - '.tile.png'.length);
    expect(portableName(fits, 'tile.png')).toBe(`${fits}.tile.png`);
    expect(portableName(`${fits}x`, 'tile.png')).toMatch(/~[0-9a-f]{8}\.tile\.png$/);
  });

  it('is a plain visible file name for any text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (art) => {
        const name = portableName(art, 'tile.png');
        expect(name).toMatch(/\.tile\.png$/);
        expect(name).not.toMatch(/[<>:"/\\|?*\p{Cc}\p{Cs}]/u);
        expect(name).not.toMatch(/^(?:con|prn|aux|nul)(?:\.|$)/i);
        expect(Buffer.byteLength(name)).toBeLessThanOrEqual(143);
      }),
    );
  });
});
