#!/usr/bin/env node
import { fileURLToPath } from 'node:url';
import { printFault } from './errors.ts';
import { watchInterrupts } from './interrupt.ts';
import { main } from './main.ts';
import { createTempFiles } from './output/temp-files.ts';
import { processIo } from './process-io.ts';

// process.exitCode and never process.exit: that would cut what is still on its way through a pipe.
const worst = (exitCode: number) => {
  process.exitCode = Math.max(Number(process.exitCode ?? 0), exitCode);
};
const temps = createTempFiles();
const interrupt = watchInterrupts(temps);
const io = {
  ...processIo(interrupt, () => worst(1)),
  asker: async () => (await import('./ask/terminal-asker.ts')).createTerminalAsker(interrupt),
  program: fileURLToPath(import.meta.url),
  childProgram: fileURLToPath(new URL('pool/child.js', import.meta.url)),
};
process.on('uncaughtException', (error) => {
  temps.removeAllNow();
  printFault(io.stderr, error);
  worst(3);
});
worst(await main(process.argv.slice(2), io, temps));
