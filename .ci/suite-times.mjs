// Prints how long each folder of tests took, and the files of more than five seconds, from vitest's JSON report.
import { readFileSync } from 'node:fs';
import { dirname, relative } from 'node:path';

const LONG_MS = 5000;
const { testResults } = JSON.parse(readFileSync(process.argv[2], 'utf8'));
const files = testResults.map(({ name, startTime, endTime }) => ({
  name: relative(process.cwd(), name),
  ms: endTime - startTime,
}));
const folders = new Map();
for (const { name, ms } of files) folders.set(dirname(name), (folders.get(dirname(name)) ?? 0) + ms);

const shown = (rows) => {
  for (const [name, ms] of rows.toSorted((a, b) => b[1] - a[1])) {
    console.log(`${(ms / 1000).toFixed(1).padStart(8)} s  ${name}`);
  }
};
console.log('=== time by folder (files run side by side, so the sum is more than the wait)');
shown([...folders]);
console.log(`=== files of more than ${LONG_MS / 1000} s`);
shown(files.filter(({ ms }) => ms > LONG_MS).map(({ name, ms }) => [name, ms]));
