import { execFileSync } from 'node:child_process';
import { cpus, totalmem } from 'node:os';

/** What a result must say to be repeated. */
export const circumstances = (seed: number) => ({
  commit: execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim(),
  seed,
  machine: {
    node: process.version,
    cpu: cpus()[0]?.model,
    cpus: cpus().length,
    memoryGb: Math.round(totalmem() / 1e9),
  },
});
