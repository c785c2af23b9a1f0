// node tests/bench/history.mjs, after a build: the rows of the ledger alone.
import { historyRows } from './history-rows.mjs';

console.table(await historyRows(5));
