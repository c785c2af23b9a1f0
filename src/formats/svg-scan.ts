import { damagedFile } from './container-facts.ts';
import { collectOutsideReferences } from './outside-references.ts';
import { collectPictures, type PictureCollector, type PlacedPicture } from './svg-pictures.ts';
import { readSvgSize, type SvgAttributes, type SvgSize } from './svg-size.ts';

/** What one pass over a drawing's markup found. */
export interface SvgScan {
  readonly size: SvgSize;
  /** The root's start tag within the text, from `<` to behind `>`. */
  readonly rootTag: { readonly start: number; readonly end: number };
  readonly textElements: number;
  readonly outsideReferences: readonly string[];
  readonly pictures: readonly PlacedPicture[];
  /** Pictures in patterns, masks and the like, whose shown size depends on what uses them. */
  readonly unplacedPictures: number;
}

interface Root {
  readonly size: SvgSize;
  readonly start: number;
  readonly end: number;
  readonly pictures: PictureCollector;
}

/** Nobody draws deeper, and readers that recurse could run out of stack. */
const DEEPEST = 500;

/** Each costs an error with its place; drawing programs write a few dozen entities. */
const MOST_LIBERTIES = 10_000;

/**
 * Reads the markup once, without building a tree and without expanding entities.
 * @throws `damaged` when elements are not closed or nested too deep; `drawing-without-size`
 */
export async function scanSvg(text: string): Promise<SvgScan> {
  const { default: sax } = await import('sax');
  const parser = sax.parser(true);
  const references = collectOutsideReferences();
  const open: string[] = [];
  let root: Root | null = null;
  let textElements = 0;
  let liberties = 0;

  parser.onopentag = (tag) => {
    const name = tag.name.replace(/^.*:/, '');
    const attributes = tag.attributes as SvgAttributes;
    if (open.push(name) > DEEPEST)
      throw damagedFile('svg', `its elements are nested more than ${DEEPEST} deep`);
    root ??= openRoot(attributes, parser.startTagPosition - 1, parser.position);
    if (name === 'text') textElements++;
    references.element(name, attributes);
    root.pictures.open(name, attributes);
  };
  parser.onclosetag = () => {
    open.pop();
    root?.pictures.close();
  };
  const readText = (content: string) => {
    if (open.at(-1) === 'style') references.styles(content);
  };
  parser.ontext = readText;
  parser.oncdata = readText;
  parser.ondoctype = references.doctype;
  parser.onprocessinginstruction = ({ name, body }) => references.instruction(name, body);
  parser.onerror = ({ message }) => {
    if (/^(?:Unexpected|Unmatched|Unclosed)/.test(message))
      throw damagedFile('svg', 'it is cut off, or its elements are not closed rightly');
    if (++liberties > MOST_LIBERTIES)
      throw damagedFile('svg', `it has more than ${MOST_LIBERTIES} entities or faults`);
    parser.resume(); // entities and other liberties are the drawing library's to judge
  };
  parser.write(text).close();

  const found = root as Root | null; // assigned in a callback, which the compiler does not follow
  if (found === null) throw damagedFile('svg', 'it has no whole svg element');
  const { placed, unplaced } = found.pictures.finish();
  return {
    size: found.size,
    rootTag: { start: found.start, end: found.end },
    textElements,
    outsideReferences: references.found,
    pictures: placed,
    unplacedPictures: unplaced,
  };
}

function openRoot(attributes: SvgAttributes, start: number, end: number): Root {
  const size = readSvgSize(attributes);
  return { size, start, end, pictures: collectPictures(size) };
}
