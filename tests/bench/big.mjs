// node tests/bench/big.mjs, after a build: the row of a very large picture alone.
import { bigRows } from './big-rows.mjs';

console.table(await bigRows());
