import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { PNG_SIGNATURE, readPngChunks, writePngChunk } from '../../src/formats/png-chunks.ts';
import { encodePng } from '../../src/formats/png-write.ts';
import { hashPixels, type PrintRecord, readPrintRecord } from '../../src/formats/print-record.ts';
import {
  PRINT_RECORD_NAMESPACE,
  parsePrintRecordXmp,
  writePrintRecordXmp,
} from '../../src/formats/print-record-xmp.ts';
import { encodeTiff } from '../../src/formats/tiff-write.ts';
import { seededNumbers } from '../pictures.ts';
import { askWitness, requireWitness } from '../witness.ts';
import { printReadyRaster, RECORD, tagsFor } from './print-ready.ts';

const raster = printReadyRaster(false);
const { record } = tagsFor(raster);
const xmp = writePrintRecordXmp(RECORD);

describe('the record as XMP', () => {
  it('comes back as it went in, whatever its texts and numbers', () => {
    const hash = fc
      .array(fc.nat(15), { minLength: 64, maxLength: 64 })
      .map((d) => d.map((n) => n.toString(16)).join(''));
    // Names begin and end with something visible; what XML cannot write at all becomes a space.
    const name = fc
      .string({ unit: 'grapheme', minLength: 1 })
      .map((text) => `a${text.replace(/\p{Cc}/gu, ' ')}z`);
    const above = fc.double({ min: 1e-9, max: 1e9, noNaN: true });
    const records = fc.record<PrintRecord>({
      program: fc.constant('blankcheck'),
      version: name,
      sourceSha256: hash,
      pixelSha256: hash,
      blankId: name,
      widthMm: above,
      heightMm: above,
      ppi: above,
      mirrored: fc.boolean(),
    });
    fc.assert(
      fc.property(records, (any) => {
        expect(parsePrintRecordXmp(writePrintRecordXmp(any))).toEqual(any);
      }),
      { seed: 71, numRuns: 300 },
    );
  });

  it('is known in attribute form, under another prefix, and beside other packets of properties', () => {
    const attributes = [...xmp.matchAll(/<blankcheck:(\w+)>([^<]*)</g)].map(
      ([, name, value]) => `q:${name}="${value}"`,
    );
    expect(attributes).toHaveLength(8);
    const other = `<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
      <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:format>image/png</dc:format></rdf:Description>
      <rdf:Description rdf:about="" xmlns:q="${PRINT_RECORD_NAMESPACE}" ${attributes.join(' ')}/></rdf:RDF></x:xmpmeta>`;
    expect(parsePrintRecordXmp(other)).toEqual(RECORD);
  });

  it.each(['Version', 'SourceSha256', 'PixelSha256', 'BlankId', 'WidthMm', 'HeightMm', 'Ppi', 'Mirrored'])(
    'is none without %s, or with nonsense in it',
    (name) => {
      const whole = new RegExp(`<blankcheck:${name}>[^<]*</blankcheck:${name}>`);
      expect(xmp).toMatch(whole);
      expect(parsePrintRecordXmp(xmp.replace(whole, ''))).toBeNull();
      expect(
        parsePrintRecordXmp(xmp.replace(whole, `<blankcheck:${name}> </blankcheck:${name}>`)),
      ).toBeNull();
    },
  );

  it.each([
    ['WidthMm', '-1'],
    ['HeightMm', '0'],
    ['Ppi', '1e999'],
    ['Ppi', '300 dpi'],
    ['Mirrored', 'yes'],
    ['PixelSha256', 'ABC'],
  ])('is none when %s is %s', (name, value) => {
    const changed = xmp.replace(new RegExp(`(<blankcheck:${name}>)[^<]*`), `$1${value}`);
    expect(changed).toContain(value);
    expect(parsePrintRecordXmp(changed)).toBeNull();
  });

  it('is none in another namespace, and in XML that is not well-formed', () => {
    expect(parsePrintRecordXmp(xmp.replace(PRINT_RECORD_NAMESPACE, 'urn:x-other:1#'))).toBeNull();
    for (const broken of [
      '',
      '<',
      xmp.slice(0, -40),
      xmp.replace('</x:xmpmeta>', ''),
      '<a>&nope;</a>',
      `${xmp}</b>`,
    ])
      expect(parsePrintRecordXmp(broken)).toBeNull();
  });

  it('is well-formed XML to libxml2', (context) => {
    requireWitness(context, 'xmllint');
    const odd = writePrintRecordXmp({ ...RECORD, blankId: '<&>"\' \u0001 ]]> ü ☕' });
    expect(askWitness('xmllint', ['--noout', 'a.xml'], { 'a.xml': odd })).toMatchObject({
      status: 0,
      stderr: '',
    });
  });
});

describe('readPrintRecord', () => {
  it.each(['jpeg', 'webp', 'tiff', 'png', 'gif', 'avif'] as const)(
    'finds the record after the imaging library saved it as %s with its XMP',
    async (format) => {
      const png = await encodePng(raster, tagsFor(raster));
      const saved = await sharp(png).keepXmp().toFormat(format).toBuffer();
      // GIF has no place for XMP in that library.
      expect(readPrintRecord(saved)).toEqual(format === 'gif' ? null : record);
    },
  );

  it('finds it after exiftool rewrote the metadata of PNG, TIFF and JPEG', async (context) => {
    requireWitness(context, 'exiftool');
    const png = await encodePng(raster, tagsFor(raster));
    const tiff = await encodeTiff(raster, tagsFor(raster));
    const jpeg = await sharp(png).keepXmp().jpeg().toBuffer();
    for (const [name, bytes] of Object.entries({ 'a.png': png, 'a.tif': tiff, 'a.jpg': jpeg })) {
      const { stdout } = askWitness('exiftool', ['-XMP-dc:Title=Plant sale', '-o', '-', name], {
        [name]: bytes,
      });
      expect(Buffer.compare(stdout, bytes)).not.toBe(0);
      expect(readPrintRecord(stdout)).toEqual(record);
    }
  });

  it('finds it after ImageMagick saved TIFF, and PNG that keeps XMP as a comment', async (context) => {
    requireWitness(context, 'convert');
    const png = await encodePng(raster, tagsFor(raster));
    const files = {
      // ImageMagick 6 passes over iTXt, where the standard puts XMP; the imaging library moves it to zTXt.
      'a.png': await sharp(png).keepXmp().png().toBuffer(),
      'a.tif': await encodeTiff(raster, tagsFor(raster)),
    };
    for (const args of [
      ['a.png', 'png:-'],
      ['a.tif', 'tif:-'],
      ['a.tif', 'jpg:-'],
      ['a.tif', 'png:-'],
    ]) {
      const { stdout } = askWitness('convert', args, files);
      expect([args, readPrintRecord(stdout)]).toEqual([args, record]);
    }
  });

  it('finds it in each kind of PNG text chunk, after the picture too', () => {
    const key = Buffer.from('XML:com.adobe.xmp\0');
    const text = Buffer.from(xmp);
    const kinds: [string, Buffer][] = [
      ['tEXt', Buffer.concat([key, text])],
      ['zTXt', Buffer.concat([key, Buffer.from([0]), deflateSync(text)])],
      ['iTXt', Buffer.concat([key, Buffer.from([0, 0, 0, 0]), text])],
      ['iTXt', Buffer.concat([key, Buffer.from('\u0001\0en\0XMP\0', 'latin1'), deflateSync(text)])],
    ];
    for (const [type, data] of kinds) {
      const png = Buffer.concat([
        PNG_SIGNATURE,
        writePngChunk('IHDR', new Uint8Array(13)),
        writePngChunk('IDAT', new Uint8Array(3 << 20)),
        writePngChunk(type, data),
        writePngChunk('IEND', new Uint8Array(0)),
      ]);
      expect(readPrintRecord(png)).toEqual(RECORD);
    }
  });

  it('finds none in art, in nothing, and where the record is out of the window of an unknown kind of file', async () => {
    expect(readPrintRecord(new Uint8Array(0))).toBeNull();
    expect(
      readPrintRecord(
        await sharp(raster.data, { raw: { width: 67, height: 41, channels: 3 } })
          .png()
          .toBuffer(),
      ),
    ).toBeNull();
    const far = Buffer.alloc(4 << 20);
    far.write(xmp, 2 << 20);
    expect(readPrintRecord(far)).toBeNull();
  });

  it('neither fails nor lingers on damaged or hostile files', async () => {
    const png = Buffer.from(await encodePng(raster, tagsFor(raster)));
    const tiff = Buffer.from(await encodeTiff(raster, tagsFor(raster)));
    const number = seededNumbers(72);
    for (const whole of [png, tiff]) {
      for (let length = 0; length < whole.length; length += 7) readPrintRecord(whole.subarray(0, length));
      for (let run = 0; run < 500; run++) {
        const changed = Buffer.from(whole);
        for (let i = 0; i < 4; i++)
          changed[Math.floor(number() * Math.min(changed.length, 1400))] = Math.floor(number() * 256);
        const read = readPrintRecord(changed);
        // A changed byte may still leave a record, but never half a one.
        if (read !== null) expect(Object.keys(read).sort()).toEqual(Object.keys(record).sort());
      }
    }
    const bomb = writePngChunk(
      'zTXt',
      Buffer.concat([
        Buffer.from('XML:com.adobe.xmp\0\0', 'latin1'),
        deflateSync(Buffer.alloc(50 << 20, 32)),
      ]),
    );
    const deep = `${PRINT_RECORD_NAMESPACE}${'<x:xmpmeta>'.repeat(80_000)}`;
    const started = performance.now();
    expect(
      readPrintRecord(Buffer.concat([PNG_SIGNATURE, ...Array.from({ length: 300 }, () => bomb)])),
    ).toBeNull();
    expect(readPrintRecord(Buffer.from(`<x:xmpmeta>${deep}</x:xmpmeta>`))).toBeNull();
    expect(
      readPrintRecord(
        Buffer.from(`<x:xmpmeta>${PRINT_RECORD_NAMESPACE}${'<rdf:RDF'.repeat(120_000)}</x:xmpmeta>`),
      ),
    ).toBeNull();
    // Generous: it takes well under a second; without the bounds it takes minutes.
    expect(performance.now() - started).toBeLessThan(20_000);
  });

  it('hashes the samples as sha256 does', () => {
    // "abc": FIPS 180-4, example of SHA-256.
    const abc = {
      widthPx: 1,
      heightPx: 1,
      model: 'rgb',
      hasAlpha: false,
      depth: 8,
      data: Buffer.from('abc'),
    } as const;
    expect(hashPixels(abc)).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('is written into a file with the hash that its pixels have', async () => {
    const png = await encodePng(raster, tagsFor(raster));
    const { data } = await sharp(png).raw().toBuffer({ resolveWithObject: true });
    expect(readPrintRecord(png)!.pixelSha256).toBe(hashPixels({ ...raster, data }));
    expect(readPngChunks(png).filter(({ type }) => type === 'iTXt')).toHaveLength(1);
  });
});
