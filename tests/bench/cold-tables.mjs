// Prints the milliseconds that the tables of a user's own condition take in a process that has done nothing before.
// Arguments: the bundled engine (see colour-rows.mjs), the profile.
import { readFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const [enginePath, profilePath] = process.argv.slice(2);
const { readProfile, warmColourTables } = await import(pathToFileURL(enginePath).href);
const profile = readProfile(readFileSync(profilePath));
const start = performance.now();
warmColourTables(profile);
console.log(performance.now() - start);
