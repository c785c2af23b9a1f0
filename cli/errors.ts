import { type BlankcheckError, showHidden } from '../src/index.ts';
import type { TextStream } from './io.ts';

/** `blankcheck: <what> [code]`, and what mends it on the lines below. */
export function printError(stream: TextStream, error: BlankcheckError): void {
  const [what = '', ...remedy] = error.message.split('\n');
  const lines = [`blankcheck: ${what} [${error.code}]`, ...remedy.map((line) => `  ${line}`)];
  stream.write(`${lines.map(showHidden).join('\n')}\n`);
}

/** A fault of ours: said so, with what it was about, and never a stack trace. */
export function printFault(stream: TextStream, error: unknown, about?: string): void {
  const told = error instanceof Error ? `${error.name}: ${error.message}` : String(error);
  const where = about === undefined ? '' : ` at "${about}"`;
  stream.write(
    `${showHidden(`blankcheck: this is a fault of the program, not of your art${where}: ${told} [fault]`)}\n` +
      '  Please report it with this line, and the artwork if you may share it.\n',
  );
}
