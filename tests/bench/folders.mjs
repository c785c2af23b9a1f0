// node tests/bench/folders.mjs: the rows of runs over folders alone.
import { folderRows } from './folder-rows.mjs';

console.table(await folderRows(Number(process.argv[2] ?? 200)));
