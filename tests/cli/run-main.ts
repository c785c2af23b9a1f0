import type { ByteStream, Io } from '../../cli/io.ts';
import { main } from '../../cli/main.ts';
import { createTempFiles, type TempFiles } from '../../cli/output/temp-files.ts';

export interface MainRun {
  readonly code: number;
  readonly stdout: string;
  readonly stderr: string;
}

export interface MainOptions {
  readonly cwd: string;
  readonly stdin?: string | Uint8Array;
  readonly env?: Readonly<Record<string, string>>;
  readonly interrupt?: AbortSignal;
  readonly temps?: TempFiles;
}

/** Runs the command line in this process, with everything outside it given and caught. No colours, 80 columns. */
export async function runMain(
  argv: readonly string[],
  {
    cwd,
    stdin = '',
    env = {},
    interrupt = new AbortController().signal,
    temps = createTempFiles(),
  }: MainOptions,
): Promise<MainRun> {
  const out: string[] = [];
  const err: string[] = [];
  const io: Io = {
    stdin: bytesOf(stdin),
    stdout: { isTTY: false, write: (text) => out.push(text) },
    stderr: { isTTY: false, write: (text) => err.push(text) },
    env,
    cwd,
    interrupt,
  };
  const code = await main(argv, io, temps);
  return { code, stdout: out.join(''), stderr: err.join('') };
}

function bytesOf(content: string | Uint8Array): ByteStream {
  return {
    isTTY: false,
    stop: () => undefined,
    async *[Symbol.asyncIterator]() {
      yield Buffer.from(content);
    },
  };
}
