import { describe, expect, it } from 'vitest';
import { familyOf, findBlank } from '../../src/catalogue/catalogue.ts';
import { resolveBlank } from '../../src/job/resolve-blank.ts';
import { bodySizeOf, drawView, radiusAt, viewsOf } from '../../src/pictures/draw-views.ts';
import { paintRaster, type Rgba } from '../pictures.ts';

const BASE = { r: 250, g: 250, b: 240 };
const PX_PER_MM = 4;

function wrapOf(id: string) {
  const blank = findBlank(id)!;
  return resolveBlank({ blank }, familyOf(blank)).wrap!;
}

/** The strip painted by place along it and down it, both 0…1. */
function viewOf(id: string, turn: number, paint: (along: number, down: number) => Rgba) {
  const wrap = wrapOf(id);
  const { strip } = wrap.development;
  const [width, height] = [Math.round(strip.widthMm * 8), Math.round(strip.heightMm * 8)];
  const raster = paintRaster(width, height, (x, y) => paint((x + 0.5) / width, (y + 0.5) / height));
  const view = drawView({ raster, stripPx: { x: 0, y: 0, width, height } }, wrap, BASE, turn, PX_PER_MM);
  const at = (x: number, y: number) =>
    Array.from(view.data.subarray((y * view.widthPx + x) * 4, (y * view.widthPx + x) * 4 + 4));
  return { wrap, view, at };
}

describe('views of a round body', () => {
  it.each([
    ['tumbler-20oz-straight', 'front', 1 / 2],
    ['tumbler-20oz-tapered', 'right', 3 / 4],
    ['mug-11oz', 'left', 1 / 4],
  ])('%s from the %s: a point so far from the middle is asin(x / r) round', (id, _, turn) => {
    // Ten stripes a millimetre are too fine; here the colour itself is the place along the strip.
    const { wrap, view, at } = viewOf(id, turn, (along) => [Math.round(along * 250), 0, 0, 255]);
    const { onceRoundMm, strip } = wrap.development;
    const start = wrap.wayRound === 'whole' ? 0 : (onceRoundMm - strip.widthMm) / 2;
    const down = wrap.clearTopMm + wrap.band.heightMm / 2;
    const y = Math.round(down * PX_PER_MM);
    for (const share of [-0.7, -0.5, 0, 0.3, 0.7]) {
      const radius = radiusAt(wrap, (y + 0.5) / PX_PER_MM);
      const x = Math.round(view.widthPx / 2 + share * radius * PX_PER_MM);
      const across = (x + 0.5 - view.widthPx / 2) / PX_PER_MM;
      const angle = Math.asin(across / radius) / (2 * Math.PI);
      const along = ((turn + angle) * onceRoundMm - start) / strip.widthMm;
      expect(Math.abs(at(x, y)[0]! - along * 250)).toBeLessThan(1.5);
    }
  });

  it('shows the bare base above and below the print, and nothing beside the body', () => {
    const { wrap, view, at } = viewOf('tumbler-20oz-tapered', 1 / 2, () => [10, 20, 30, 255]);
    const middle = Math.round(view.widthPx / 2);
    const row = (mm: number) => Math.floor(mm * PX_PER_MM);
    expect(at(middle, row(wrap.clearTopMm - 1))).toEqual([250, 250, 240, 255]);
    expect(at(middle, row(wrap.clearTopMm + 1))).toEqual([10, 20, 30, 255]);
    expect(at(middle, row(wrap.clearTopMm + wrap.band.heightMm - 1))).toEqual([10, 20, 30, 255]);
    expect(at(middle, row(wrap.clearTopMm + wrap.band.heightMm + 1))).toEqual([250, 250, 240, 255]);
    // The foot is 70 mm across, the rim 89: at the foot 9.5 mm on either side are clear.
    const foot = view.heightPx - 3;
    expect(at(row(9), foot)[3]).toBe(0);
    expect(at(row(10.5), foot)[3]).toBe(255);
  });

  it('shows the gap at the handle bare, from the back', () => {
    const { at, view } = viewOf('mug-11oz', 0, () => [10, 20, 30, 255]);
    const y = Math.round(view.heightPx / 2);
    expect(at(Math.round(view.widthPx / 2), y)).toEqual([250, 250, 240, 255]);
    // 41.7 mm of gap: its ends are 20.85 mm round, which is 41 sin(20.85 / 41) = 19.96 mm across.
    const from = (mm: number) => Math.round(view.widthPx / 2 + mm * PX_PER_MM);
    expect(at(from(19.4), y)[0]).toBe(250);
    expect(at(from(20.5), y)[0]).toBe(10);
  });

  it('has a front opposite the handle, and each end of the paper on its own side', () => {
    expect(viewsOf(wrapOf('mug-11oz')).map(({ turn }) => turn)).toEqual([1 / 2, 3 / 4, 0, 1 / 4]);
    expect(bodySizeOf(wrapOf('mug-11oz'))).toEqual({ heightMm: 94.9, radiusMm: 41 });
  });
});
