import { BlankcheckError, openZip, type ZipArchive } from '../../src/index.ts';
import type { ByteStream } from '../io.ts';
import type { PlannedArtwork } from './planned-artwork.ts';
import { cannotRead, collectBounded, readFileBounded } from './read-bounded.ts';

/** Reads artworks one at a time. Keeps the archive of the last entry open, and no other bytes. */
export interface ArtworkReader {
  /** @throws BlankcheckError of kind `artwork`; whatever aborted the signal. */
  read(artwork: PlannedArtwork): Promise<Uint8Array>;
}

/** `maxBytes` replaces the limit of the table for one artwork; an archive as a whole keeps to the table. */
export function createArtworkReader(
  stdin: ByteStream,
  signal: AbortSignal,
  maxBytes?: number,
): ArtworkReader {
  let opened: { readonly file: string; readonly archive: ZipArchive } | null = null;
  const openOnce = async (file: string): Promise<ZipArchive> => {
    if (opened?.file === file) return opened.archive;
    opened = null;
    const archive = await openZip(await readFileBounded(file, signal));
    opened = { file, archive };
    return archive;
  };
  return {
    async read({ origin }) {
      if (origin.kind !== 'entry') opened = null;
      switch (origin.kind) {
        case 'fault':
          throw new BlankcheckError(origin.error.code, origin.error.message);
        case 'stdin':
          return readStdin(stdin, signal, maxBytes);
        case 'file':
          return readFileBounded(origin.file, signal, maxBytes);
        case 'entry': {
          const archive = await openOnce(origin.archive);
          const entry = archive.entries.find(({ name }) => name === origin.entry);
          if (entry) return archive.read(entry, signal);
          throw new BlankcheckError(
            'cannot-read',
            'The archive changed while it was read. Start again when it rests.',
          );
        }
      }
    },
  };
}

async function readStdin(stdin: ByteStream, signal: AbortSignal, maxBytes?: number): Promise<Uint8Array> {
  // An interrupt that came before is told to no listener.
  signal.throwIfAborted();
  const stop = () => stdin.stop();
  signal.addEventListener('abort', stop);
  try {
    const bytes = await collectBounded(stdin, maxBytes);
    signal.throwIfAborted();
    return bytes;
  } catch (cause) {
    signal.throwIfAborted();
    throw cause instanceof BlankcheckError ? cause : cannotRead(cause);
  } finally {
    signal.removeEventListener('abort', stop);
  }
}
