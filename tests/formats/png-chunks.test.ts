import { describe, expect, it } from 'vitest';
import { PNG_SIGNATURE, readPngChunks, writePngChunk } from '../../src/formats/png-chunks.ts';

const bytesOf = (...parts: Uint8Array[]) => new Uint8Array(Buffer.concat(parts));
const IHDR = writePngChunk('IHDR', Uint8Array.of(0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0));
const IDAT = writePngChunk('IDAT', Uint8Array.of(1, 2, 3));
const IEND = writePngChunk('IEND', new Uint8Array(0));
const wrongCrc = (chunk: Uint8Array) => chunk.with(chunk.length - 1, chunk.at(-1)! ^ 1);

describe('PNG chunks', () => {
  it('writes the IEND chunk as ISO/IEC 15948 fixes it', () => {
    // The CRC of an IEND chunk is AE 42 60 82 in every PNG.
    expect([...IEND]).toEqual([0, 0, 0, 0, 0x49, 0x45, 0x4e, 0x44, 0xae, 0x42, 0x60, 0x82]);
  });

  it('reads what it wrote, in order, as views, and stops at IEND', () => {
    const text = writePngChunk('tEXt', Uint8Array.of(65, 0, 66));
    const bytes = bytesOf(PNG_SIGNATURE, IHDR, text, IDAT, IEND, Uint8Array.of(1, 2, 3));
    const chunks = readPngChunks(bytes);
    expect(chunks.map(({ type, offset }) => [type, offset])).toEqual([
      ['IHDR', 8],
      ['tEXt', 33],
      ['IDAT', 48],
      ['IEND', 63],
    ]);
    expect([...chunks[1]!.data]).toEqual([65, 0, 66]);
    expect(chunks[1]!.data.buffer).toBe(bytes.buffer);
  });

  it('leaves out an ancillary chunk whose CRC is wrong and refuses a critical one', () => {
    const pHYs = writePngChunk('pHYs', new Uint8Array(9));
    const types = readPngChunks(bytesOf(PNG_SIGNATURE, IHDR, wrongCrc(pHYs), IDAT, IEND)).map(
      ({ type }) => type,
    );
    expect(types).toEqual(['IHDR', 'IDAT', 'IEND']);
    for (const broken of [
      [wrongCrc(IHDR), IDAT, IEND],
      [IHDR, wrongCrc(IDAT), IEND],
      [IHDR, IDAT, wrongCrc(IEND)],
    ])
      expect(() => readPngChunks(bytesOf(PNG_SIGNATURE, ...broken))).toThrow(
        expect.objectContaining({ code: 'damaged' }),
      );
  });

  it('refuses a file without IHDR first, without IDAT, with a lying length, or cut at any byte', () => {
    const whole = bytesOf(PNG_SIGNATURE, IHDR, IDAT, IEND);
    const lying = whole.with(8 + IHDR.length, 0xff);
    const cases = [bytesOf(PNG_SIGNATURE, IDAT, IHDR, IEND), bytesOf(PNG_SIGNATURE, IHDR, IEND), lying];
    for (let length = 0; length < whole.length; length++) cases.push(whole.subarray(0, length));
    for (const bytes of cases)
      expect(() => readPngChunks(bytes)).toThrow(expect.objectContaining({ code: 'damaged' }));
  });
});
