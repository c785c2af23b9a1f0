// node tests/bench/report.mjs [artworks] [rounds] after a build: the rows of the picture report alone.
import { reportRows } from './report-rows.mjs';

const [files = 200, rounds = 3] = process.argv.slice(2).map(Number);
console.table(await reportRows(files, rounds));
