import { askWitness } from '../witness.ts';

type Dictionary = Readonly<Record<string, unknown>>;

/** A PDF as qpdf, which is no code of ours, understands it. Strings are as its JSON has them: `/Name`, `u:text`, `b:hex`, `3 0 R`. */
export interface ReadPdf {
  readonly catalog: Dictionary;
  readonly info: Dictionary;
  readonly trailer: Dictionary;
  readonly pages: readonly Dictionary[];
  /** Dictionaries of all objects and streams. */
  readonly objects: readonly { readonly number: number; readonly dictionary: Dictionary }[];
  /** What a reference stands for, else the value itself. */
  readonly follow: (value: unknown) => Dictionary;
  /** Bytes of a stream, unpacked, with predictors undone. */
  readonly unpack: (reference: unknown) => Buffer;
}

/** @see the manual of qpdf, "qpdf JSON", version 2 */
export function readPdf(bytes: Uint8Array): ReadPdf {
  const answer = askWitness('qpdf', ['--json=2', '--json-key=qpdf', '--json-stream-data=none', 'a.pdf'], {
    'a.pdf': bytes,
  });
  const [, rows] = JSON.parse(answer.stdout.toString('utf8')).qpdf as [object, Record<string, Row>];
  const dictionaryOf = ({ value, stream }: Row) => (stream?.dict ?? value) as Dictionary;
  const follow = (value: unknown) =>
    typeof value === 'string' ? dictionaryOf(rows[`obj:${value}`]!) : (value as Dictionary);
  const trailer = dictionaryOf(rows.trailer!);
  const catalog = follow(trailer['/Root']);
  return {
    catalog,
    trailer,
    info: follow(trailer['/Info']),
    pages: (follow(catalog['/Pages'])['/Kids'] as string[]).map(follow),
    objects: Object.entries(rows)
      .filter(([name]) => name !== 'trailer')
      .map(([name, row]) => ({ number: Number.parseInt(name.slice(4), 10), dictionary: dictionaryOf(row) })),
    follow,
    unpack: (reference) =>
      askWitness(
        'qpdf',
        [`--show-object=${String(reference).replace(/ (\d+) R$/, ',$1')}`, '--filtered-stream-data', 'a.pdf'],
        { 'a.pdf': bytes },
      ).stdout,
  };
}

interface Row {
  readonly value?: unknown;
  readonly stream?: { readonly dict: unknown };
}
