// node tests/bench/sheets.mjs, after a build: the rows of sheets of many pieces alone.
import { sheetRows } from './sheet-rows.mjs';

console.table(await sheetRows(5));
