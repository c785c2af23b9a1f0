import { hashPdfObjects } from './pdf-seal.ts';

/** A value of a PDF file. Strings are written as they are: names with their slash, references, texts made by `pdfText`. */
export type PdfValue =
  | number
  | boolean
  | string
  | readonly PdfValue[]
  | { readonly [key: string]: PdfValue | undefined };

/** Reference to an object of the file. @see ISO 32000-1:2008, 7.3.10 */
export type PdfReference = `${number} 0 R`;

/**
 * The objects of a PDF file in the order in which they are begun. Nothing in the bytes depends on the time or the
 * machine. Parts of streams are kept as they are handed over, and copied once, into the finished file.
 * @see ISO 32000-1:2008, 7.5 (file structure)
 */
export class PdfObjects {
  readonly #bodies: (readonly Uint8Array[] | null)[] = [];

  /** A number for an object whose content comes later by `set`. */
  reserve(): PdfReference {
    this.#bodies.push(null);
    return `${this.#bodies.length} 0 R`;
  }

  set(reference: PdfReference, value: PdfValue): PdfReference {
    this.#bodies[Number.parseInt(reference, 10) - 1] = [latin(writePdfValue(value))];
    return reference;
  }

  add(value: PdfValue): PdfReference {
    return this.set(this.reserve(), value);
  }

  /** A stream of bytes that are packed already, as far as `entries` say so. @see ISO 32000-1:2008, 7.3.8 */
  addStream(
    entries: Readonly<Record<string, PdfValue | undefined>>,
    ...parts: readonly Uint8Array[]
  ): PdfReference {
    const length = parts.reduce((sum, part) => sum + part.length, 0);
    const reference = this.reserve();
    const head = latin(`${writePdfValue({ ...entries, Length: length })}\nstream\n`);
    this.#bodies[Number.parseInt(reference, 10) - 1] = [head, ...parts, latin('\nendstream')];
    return reference;
  }

  /** The file: header, objects, cross-references, trailer. Its identifier is a hash of its objects. */
  finish(trailer: { readonly Root: PdfReference; readonly Info: PdfReference }): Uint8Array {
    // Four bytes above 127 tell transfer programs that this is no text. @see ISO 32000-1:2008, 7.5.2
    const parts: Uint8Array[] = [latin('%PDF-1.7\n%\xe2\xe3\xcf\xd3\n')];
    let at = parts[0]!.length;
    const push = (part: Uint8Array) => {
      parts.push(part);
      at += part.length;
    };
    const offsets = this.#bodies.map((body, index) => {
      if (body === null) throw new Error(`Expected object ${index + 1} to be set.`);
      const offset = at;
      push(latin(`${index + 1} 0 obj\n`));
      for (const part of body) push(part);
      push(latin('\nendobj\n'));
      return offset;
    });
    const id = `<${hashPdfObjects(parts)}>`;
    const size = offsets.length + 1;
    const rows = offsets.map((offset) => `${String(offset).padStart(10, '0')} 00000 n \n`);
    const references = `xref\n0 ${size}\n0000000000 65535 f \n${rows.join('')}`;
    const foot = writePdfValue({ Size: size, ...trailer, ID: [id, id] });
    parts.push(latin(`${references}trailer\n${foot}\nstartxref\n${at}\n%%EOF\n`));
    return Buffer.concat(parts);
  }
}

function writePdfValue(value: PdfValue): string {
  if (typeof value === 'number') return writePdfNumber(value);
  if (typeof value === 'string') return value;
  if (typeof value === 'boolean') return String(value);
  if (isList(value)) return `[${value.map(writePdfValue).join(' ')}]`;
  const entries = Object.entries(value).flatMap(([key, entry]) =>
    entry === undefined ? [] : [`/${key} ${writePdfValue(entry)}`],
  );
  return `<<${entries.join(' ')}>>`;
}

function isList(value: object): value is readonly PdfValue[] {
  return Array.isArray(value);
}

/** All digits of the number, and no exponent, which PDF does not know. @see ISO 32000-1:2008, 7.3.3 */
export function writePdfNumber(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`Expected a finite number, received ${value}.`);
  const text = String(value);
  return text.includes('e') ? value.toFixed(20).replace(/\.?0+$/, '') : text;
}

/** Text as UTF-16 with its mark, in hexadecimal: needs no escapes. @see ISO 32000-1:2008, 7.9.2.2 */
export function pdfText(text: string): string {
  return `<FEFF${Buffer.from(text, 'utf16le').swap16().toString('hex').toUpperCase()}>`;
}

function latin(text: string): Uint8Array {
  return Buffer.from(text, 'latin1');
}
