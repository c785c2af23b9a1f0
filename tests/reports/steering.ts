/**
 * The characters of a text that a terminal obeys or that reorder what is read, as code points: C0 and C1 controls
 * (ECMA-48) save the line feed, bidirectional controls (UAX #9), lone surrogates. Written out by number, apart from
 * the character classes of the code under test.
 */
export function findSteering(text: string): readonly string[] {
  return [...text]
    .map((character) => character.codePointAt(0)!)
    .filter((code) => {
      const control = (code < 0x20 && code !== 0x0a) || (code >= 0x7f && code <= 0x9f);
      const mark = code === 0x061c || code === 0x200e || code === 0x200f;
      const embedding = (code >= 0x202a && code <= 0x202e) || (code >= 0x2066 && code <= 0x2069);
      return control || mark || embedding || (code >= 0xd800 && code <= 0xdfff);
    })
    .map((code) => `U+${code.toString(16)}`);
}
