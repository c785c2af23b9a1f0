// Writes src/icc/convert-grid3-wasm.ts: the loop over pixels that is written in WebAssembly's text form, assembled.
import { readFileSync, writeFileSync } from 'node:fs';
import wabt from 'wabt';

const source = new URL('../src/icc/convert-grid3.wat', import.meta.url);
const assembler = await wabt();
const module = assembler.parseWat('convert-grid3.wat', readFileSync(source, 'utf8'), { simd: true });
const bytes = Buffer.from(module.toBinary({}).buffer);
module.destroy();

writeFileSync(
  new URL('../src/icc/convert-grid3-wasm.ts', import.meta.url),
  [
    '// Made by seeds/make-kernel.mjs from convert-grid3.wat. Change that, not this.',
    `export const CONVERT_GRID3_WASM = '${bytes.toString('base64')}';\n`,
  ].join('\n'),
);
