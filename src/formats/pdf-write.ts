import { deflateSync } from 'node:zlib';
import type { Drawing } from '../geometry/drawing.ts';
import { MM_PER_INCH } from '../geometry/length.ts';
import type { Path } from '../geometry/path.ts';
import type { RectMm } from '../geometry/rectangle.ts';
import type { Raster } from '../raster/raster.ts';
import { writePdfDrawing, writePdfPath } from './pdf-drawing.ts';
import { PdfObjects, type PdfReference, pdfText, writePdfNumber } from './pdf-objects.ts';
import { addPdfPicture } from './pdf-picture.ts';
import type { PrintRecord } from './print-record.ts';
import { writePrintRecordXmp } from './print-record-xmp.ts';
import { writeSrgbProfile } from './srgb-profile.ts';

/** A picture on a page. A raster that is placed several times, on whichever pages, is stored once. */
export interface PdfPicture {
  /** 8-bit rgb, with or without alpha, or opaque cmyk; all of a file of one model. */
  readonly raster: Raster;
  /** The box that it fills. */
  readonly placeMm: RectMm;
  /** What is painted of it, on the page; all of it when left out. */
  readonly clip?: Path;
}

/** A page as it is sent to the printer; all places from its top left corner, in mm. */
export interface PdfPage {
  readonly widthMm: number;
  readonly heightMm: number;
  /** What is left after cutting, and the same with its bleed; cut at the page's edges. */
  readonly trimMm: RectMm;
  readonly bleedMm: RectMm;
  readonly pictures: readonly PdfPicture[];
  /** Vector marks, drawn over the pictures. */
  readonly drawing: Drawing;
  /** What all lengths of the page are multiplied by, for a printer that prints too short or too long; 1 when left out. */
  readonly scale?: { readonly x: number; readonly y: number };
}

export interface PdfTags {
  readonly record: PrintRecord;
  /** ICC profile of the pictures and the marks; sRGB when left out, which inks must not. */
  readonly profile?: Uint8Array;
  /** The name of the printing condition, where `profile` is that of a printer: makes it the output intent too. */
  readonly outputIntent?: string;
  readonly title?: string;
}

/** A point of PDF, which is 1/72 inch. @see ISO 32000-1:2008, 8.3.2.3 */
const POINTS_PER_MM = 72 / MM_PER_INCH;

/**
 * A PDF whose pages have exactly their size, print scaling off, pictures stored losslessly with their profile, marks as
 * vectors, the program's record as XMP at the file's beginning. No fonts, no dates. Same input, same bytes.
 * @see ISO 32000-1:2008, 7.7.3.3 (page objects), 12.2 (viewer preferences), 14.3.2 (metadata), 14.11.2 (page boundaries)
 */
export async function encodePdf(pages: readonly PdfPage[], tags: PdfTags): Promise<Uint8Array> {
  const { record, profile = writeSrgbProfile(), outputIntent, title } = tags;
  const model = picturesOf(pages).some(({ model }) => model === 'cmyk') ? 'cmyk' : 'rgb';
  const objects = new PdfObjects();
  const root = objects.reserve();
  // Not packed, so that programs that know nothing of PDF find it. @see ISO 16684-3 (from memory)
  const xmp = Buffer.from(writePrintRecordXmp(record), 'utf8');
  const metadata = objects.addStream({ Type: '/Metadata', Subtype: '/XML' }, xmp);
  const program = pdfText(`${record.program} ${record.version}`);
  const info = objects.add({ Title: title && pdfText(title), Creator: program, Producer: program });
  const icc = objects.addStream(
    {
      N: model === 'cmyk' ? 4 : 3,
      Alternate: model === 'cmyk' ? '/DeviceCMYK' : '/DeviceRGB',
      Filter: '/FlateDecode',
    },
    deflateSync(profile),
  );
  const space = objects.add(['/ICCBased', icc]);
  const pictures = await addPictures(objects, pages, space);
  const tree = objects.reserve();
  const kids = pages.map((page) => addPage(objects, page, { tree, space, pictures, model }));
  objects.set(tree, { Type: '/Pages', Kids: kids, Count: kids.length });
  objects.set(root, {
    Type: '/Catalog',
    Pages: tree,
    Metadata: metadata,
    ViewerPreferences: { PrintScaling: '/None' },
    OutputIntents: outputIntent === undefined ? undefined : [tellIntent(outputIntent, icc)],
  });
  return objects.finish({ Root: root, Info: info });
}

/** One after the other: each is packed in a thread of its own, and all at once would need the memory of all. */
async function addPictures(
  objects: PdfObjects,
  pages: readonly PdfPage[],
  space: PdfReference,
): Promise<ReadonlyMap<Raster, PdfReference>> {
  const stored = new Map<Raster, PdfReference>();
  for (const raster of picturesOf(pages)) stored.set(raster, await addPdfPicture(objects, raster, space));
  return stored;
}

/** The pictures of these pages, each once, in the order of their first use. */
export function picturesOf(pages: readonly PdfPage[]): readonly Raster[] {
  return [...new Set(pages.flatMap(({ pictures }) => pictures.map(({ raster }) => raster)))];
}

interface Shared {
  readonly tree: PdfReference;
  readonly space: PdfReference;
  readonly pictures: ReadonlyMap<Raster, PdfReference>;
  readonly model: 'rgb' | 'cmyk';
}

function addPage(objects: PdfObjects, page: PdfPage, { tree, space, pictures, model }: Shared): PdfReference {
  const { widthMm, heightMm, trimMm, bleedMm, drawing, scale = { x: 1, y: 1 } } = page;
  const perX = POINTS_PER_MM * scale.x;
  const perY = POINTS_PER_MM * scale.y;
  // PDF counts upwards from the foot of the page.
  const box = ({ x, y, width, height }: RectMm) => [
    Math.max(0, x) * perX,
    (heightMm - Math.min(heightMm, y + height)) * perY,
    Math.min(widthMm, x + width) * perX,
    (heightMm - Math.max(0, y)) * perY,
  ];
  const rasters = picturesOf([page]);
  const content = [
    matrix([perX, 0, 0, -perY, 0, heightMm * perY]),
    ...page.pictures.map(
      (picture) =>
        `q ${clipTo(picture)}${matrix(placeOf(picture))} /P${rasters.indexOf(picture.raster)} Do Q`,
    ),
    '/C cs /C CS',
    writePdfDrawing(drawing, model),
  ].join('\n');
  const contents = objects.addStream({ Filter: '/FlateDecode' }, deflateSync(Buffer.from(content, 'latin1')));
  return objects.add({
    Type: '/Page',
    Parent: tree,
    MediaBox: [0, 0, widthMm * perX, heightMm * perY],
    BleedBox: box(bleedMm),
    TrimBox: box(trimMm),
    Resources: {
      ColorSpace: { C: space },
      XObject: Object.fromEntries(rasters.map((raster, index) => [`P${index}`, pictures.get(raster)])),
    },
    Contents: contents,
  });
}

/** @see ISO 32000-1:2008, 8.5.4 (clipping paths) */
function clipTo({ clip }: PdfPicture): string {
  return clip ? `${writePdfPath(clip)} W n ` : '';
}

/** From the unit square of an image, whose top is at 1, to its box, where y points down. @see ISO 32000-1:2008, 8.3.4, 8.9.5.1 */
function placeOf({ placeMm: { x, y, width, height } }: PdfPicture): readonly number[] {
  return [width, 0, 0, -height, x, y + height];
}

function matrix(numbers: readonly number[]): string {
  return `${numbers.map(writePdfNumber).join(' ')} cm`;
}

/** A condition of the user's own, which no registry names: so its profile comes along. @see ISO 32000-1:2008, 14.11.5 */
function tellIntent(name: string, profile: PdfReference) {
  return {
    Type: '/OutputIntent',
    S: '/GTS_PDFX',
    OutputConditionIdentifier: '(Custom)',
    Info: pdfText(name),
    DestOutputProfile: profile,
  };
}
