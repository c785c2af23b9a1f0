// node tests/bench/report.mjs after a build: the rows of the picture report alone.
import { reportRows } from './report-rows.mjs';

console.table(await reportRows());
