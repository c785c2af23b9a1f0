import type { Asker } from './ask/asker.ts';

/** Text that goes out; a reader that went away is no error. */
export interface TextStream {
  write(text: string): void;
  readonly isTTY: boolean;
  readonly columns?: number | undefined;
}

/** Bytes that come in. */
export interface ByteStream extends AsyncIterable<Uint8Array> {
  readonly isTTY: boolean;
  /** Ends the waiting for more. */
  stop(): void;
}

/** Everything outside that a run may touch, besides the file system. */
export interface Io {
  readonly stdin: ByteStream;
  readonly stdout: TextStream;
  readonly stderr: TextStream;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** Who can be asked, once somebody is; left out where nobody can. */
  readonly asker?: () => Promise<Asker>;
  /** Paths on the command line are relative to it. */
  readonly cwd: string;
  /** The file of this program, which a shortcut starts; left out, that of the installed package. */
  readonly program?: string;
  /** The program of the processes that artworks are judged in; left out, all is done in this one. */
  readonly childProgram?: string;
  /** Aborted by Ctrl-C and the like. */
  readonly interrupt: AbortSignal;
}
