import { parseSvgLength, parseViewBox, type SvgAttributes, type SvgSize } from './svg-size.ts';
import { compose, type Linear, parseTransform, scaling, viewBoxScale } from './svg-transform.ts';

/** A picture inside a drawing, with how its frame is shown; its own pixels are not looked at here. */
export interface PlacedPicture {
  readonly href: string;
  /** The frame in user units; null: as large as the picture. */
  readonly width: number | null;
  readonly height: number | null;
  readonly preserveAspectRatio: string;
  /** From user units to pixels of the drawing at its natural size. */
  readonly toNatural: Linear;
}

export interface PictureCollector {
  readonly open: (name: string, attributes: SvgAttributes) => void;
  readonly close: () => void;
  /** `unplaced` counts those whose shown size depends on what paints with them. */
  readonly finish: () => { readonly placed: readonly PlacedPicture[]; readonly unplaced: number };
}

interface Frame {
  readonly linear: Linear;
  /** What percentages count from, in user units. */
  readonly viewport: { readonly width: number; readonly height: number };
  /** False below elements that are not drawn where they stand. */
  readonly drawn: boolean;
}

interface Found extends PlacedPicture {
  readonly id: string | undefined;
  readonly drawn: boolean;
  /** Its own transform, which `use` repeats. */
  readonly own: Linear;
}

const NEVER_DRAWN = new Set([
  'defs',
  'symbol',
  'pattern',
  'mask',
  'clipPath',
  'marker',
  'filter',
  'linearGradient',
  'radialGradient',
]);
/** More would cost a header read each; no artwork has as many. */
const MOST_PICTURES = 500;

/** Follows transforms and viewports down the elements, in the order in which they open and close. */
export function collectPictures({ widthPx, heightPx, viewBox }: SvgSize): PictureCollector {
  const outside: Frame = {
    linear: scaling(1, 1),
    viewport: { width: widthPx, height: heightPx },
    drawn: true,
  };
  const frames: Frame[] = [outside];
  const pictures: Found[] = [];
  const uses = new Map<string, Linear[]>();
  let overflow = 0;

  return {
    open: (name, attributes) => {
      const parent = frames.at(-1)!;
      const own = parseTransform(attributes.transform);
      const frame: Frame = {
        ...parent,
        linear: compose(parent.linear, own),
        drawn: parent.drawn && !NEVER_DRAWN.has(name),
      };
      const root = frames.length === 1;
      frames.push(
        name === 'svg'
          ? insideSvg(frame, attributes, root ? { width: widthPx, height: heightPx, viewBox } : null)
          : frame,
      );
      const href = attributes.href ?? attributes['xlink:href'] ?? '';
      if (name === 'use' && frame.drawn) addUse(uses, href.slice(1), frame.linear);
      if (name !== 'image' || !/^\s*data:image\/(?!svg)/i.test(href)) return;
      if (pictures.length >= MOST_PICTURES) overflow++;
      else
        pictures.push({
          ...describeImage(href, attributes, frame),
          id: attributes.id,
          drawn: frame.drawn,
          own,
        });
    },
    close: () => {
      frames.pop();
    },
    finish: () => {
      const usesOf = ({ id }: Found) => (id === undefined ? [] : (uses.get(id) ?? []));
      const repeated = pictures.flatMap((picture) =>
        usesOf(picture).map((linear) => ({ ...picture, toNatural: compose(linear, picture.own) })),
      );
      const unplaced = pictures.filter((picture) => !picture.drawn && usesOf(picture).length === 0).length;
      return {
        placed: [...pictures.filter(({ drawn }) => drawn), ...repeated],
        unplaced: unplaced + overflow,
      };
    },
  };
}

/** A picture used often at different sizes shows its worst early; more would only cost time. */
const MOST_USES = 50;

function addUse(uses: Map<string, Linear[]>, id: string, linear: Linear): void {
  const known = uses.get(id) ?? [];
  if (known.length < MOST_USES) known.push(linear);
  uses.set(id, known);
}

/** A nested svg opens a viewport of its own; the root's size is known already. @see SVG 2, 8.2 */
function insideSvg(
  frame: Frame,
  attributes: SvgAttributes,
  root: { width: number; height: number; viewBox: SvgSize['viewBox'] } | null,
): Frame {
  const width = root?.width ?? parseSvgLength(attributes.width, frame.viewport.width) ?? frame.viewport.width;
  const height =
    root?.height ?? parseSvgLength(attributes.height, frame.viewport.height) ?? frame.viewport.height;
  const viewBox = root ? root.viewBox : parseViewBox(attributes.viewBox);
  if (viewBox === null) return { ...frame, viewport: { width, height } };
  const { x, y } = viewBoxScale({ width, height }, viewBox, attributes.preserveAspectRatio);
  return { ...frame, linear: compose(frame.linear, scaling(x, y)), viewport: viewBox };
}

function describeImage(href: string, attributes: SvgAttributes, { linear, viewport }: Frame): PlacedPicture {
  return {
    href,
    width: parseSvgLength(attributes.width, viewport.width),
    height: parseSvgLength(attributes.height, viewport.height),
    preserveAspectRatio: attributes.preserveAspectRatio ?? '',
    toNatural: linear,
  };
}
