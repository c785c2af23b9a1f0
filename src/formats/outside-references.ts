import type { SvgAttributes } from './svg-size.ts';

/** Enough to tell the maker what is missing; a hostile file could name millions. */
const MOST_KEPT = 100;
const LONGEST_KEPT = 200;

/** Collects what a drawing wants from outside itself: links, style sheets, entities, and what only a browser draws. */
export interface OutsideReferences {
  readonly found: readonly string[];
  readonly element: (name: string, attributes: SvgAttributes) => void;
  readonly styles: (text: string) => void;
  readonly instruction: (name: string, body: string) => void;
  readonly doctype: (text: string) => void;
}

/** @see SVG 2, chapter 16 (linking) and 5.11 (style); XML 1.0, 4.2.2 (external entities) */
export function collectOutsideReferences(): OutsideReferences {
  const found: string[] = [];
  const add = (reference: string) => {
    const target = reference.trim();
    const inside = target === '' || /^(?:#|data:)/i.test(target);
    if (!inside && found.length < MOST_KEPT) found.push(target.slice(0, LONGEST_KEPT));
  };
  const styles = (text: string) => {
    if (!/url\(|@import/i.test(text)) return;
    for (const [, target = ''] of text.matchAll(/url\(\s*["']?([^"')]*)/gi)) add(target);
    for (const [, target = ''] of text.matchAll(/@import\s+["']([^"']*)/gi)) add(target);
  };
  return {
    found,
    styles,
    element: (name, attributes) => {
      if (name === 'foreignObject' || name === 'script') add(`<${name}>`);
      for (const [attribute, value] of Object.entries(attributes)) {
        // A hyperlink is for reading, it is never drawn.
        if (attribute === 'href' || attribute.endsWith(':href')) name !== 'a' && add(value);
        else if (!attribute.startsWith('xmlns')) styles(value);
      }
    },
    instruction: (name, body) => {
      if (name === 'xml-stylesheet') add(/href\s*=\s*["']([^"']*)/.exec(body)?.[1] ?? '');
    },
    doctype: (text) => {
      for (const [, target = ''] of text.matchAll(
        /<!ENTITY\s[^>]*?\b(?:SYSTEM|PUBLIC\s+["'][^"']*["'])\s+["']([^"']*)/g,
      ))
        add(target);
    },
  };
}
