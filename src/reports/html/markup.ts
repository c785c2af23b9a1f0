import { showHidden } from '../visible-text.ts';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text as it is shown in an element or in a quoted attribute: never markup, and nothing in it hides or reorders what is read. */
export function shown(text: string): string {
  return showHidden(text).replace(/[&<>"']/g, (character) => ENTITIES[character]!);
}

/** A name from outside, whose direction turns nothing beside it. @see HTML, 4.5.24 (bdi) */
export function shownName(name: string): string {
  return `<bdi>${shown(name)}</bdi>`;
}

/** A number of an attribute, to a thousandth, without an exponent. */
export function decimal(value: number): string {
  return String(Number(value.toFixed(3)));
}
