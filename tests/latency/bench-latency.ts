import { execFileSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, totalmem } from 'node:os';
import { parseArgs } from 'node:util';
import { chromiumPath } from '../browser/chromium';
import { openWatchedSite } from '../browser/watched-site';
import { type Measured, PARTS, partsOf, percentile } from './edges';
import { grammarChanges } from './grammar-changes';
import { listen } from './listen';
import { pageScript } from './page-script';
import { TURNS } from './turns';

// npm run bench:latency: from the last speech in the captured sound to the first sample of spoken words on the reply
// bus, in Chromium with the built app and a fake microphone. Printed and written down; no time is asserted.

const { values } = parseArgs({
  options: {
    runs: { type: 'string', default: '2' },
    out: { type: 'string', default: 'test-output/latency.json' },
  },
});
if (!chromiumPath) {
  console.log('NOT RUN: no Chromium was found. Install one, or name it in CHROMIUM.');
  process.exit(1);
}

const GROUPS = ['all', 'ready', 'rendered'] as const;
const isIn = (group: (typeof GROUPS)[number], { isReady }: Measured): boolean =>
  group === 'all' || isReady === (group === 'ready');

const ms = (value: number): number => Math.round(value);

function summary(measured: readonly Measured[]) {
  const of = (part: 'all' | (typeof PARTS)[number]) => {
    const all = measured.map((one) => one[part]);
    return { median: ms(percentile(all, 0.5)), p95: ms(percentile(all, 0.95)) };
  };
  return Object.fromEntries([...PARTS, 'all' as const].map((part) => [part, of(part)]));
}

const memory = await grammarChanges();
const site = await openWatchedSite({
  ear: pageScript('watch-ear.js'),
  beside: { 'latency-tap.js': pageScript('tap-worklet.js') },
});
const loadBefore = loadavg();
const runs = [];
for (let run = 0; run < Number(values.runs); run += 1) {
  const { readyMs, turns } = await listen(site, TURNS);
  runs.push({ readyMs: ms(readyMs), turns: turns.map(({ text, edges }) => ({ text, parts: partsOf(edges) })) });
}
await site.close();

const turns = runs.flatMap((run) => run.turns);
const measured = turns.flatMap(({ parts }) => (typeof parts === 'string' ? [] : [parts]));
const missed = turns.flatMap(({ text, parts }) => (typeof parts === 'string' ? [`${text}: ${parts}`] : []));
const result = {
  commit: execFileSync('git', ['rev-parse', '--short', 'HEAD'], { encoding: 'utf8' }).trim(),
  machine: {
    node: process.version,
    cpu: cpus()[0]?.model,
    cpus: cpus().length,
    memoryGb: Math.round(totalmem() / 1e9),
    /** Processes that wanted a core, on the average of the last minute: what else the machine had to do. */
    loadBefore: loadBefore[0],
    loadAfter: loadavg()[0],
  },
  utterances: turns.length,
  missed,
  groups: Object.fromEntries(
    GROUPS.map((group) => {
      const some = measured.filter((one) => isIn(group, one));
      return [group, { count: some.length, ...summary(some) }];
    }),
  ),
  recogniserReadyMs: runs.map(({ readyMs }) => readyMs),
  memory,
  runs,
};
mkdirSync('test-output', { recursive: true });
writeFileSync(values.out, `${JSON.stringify(result, null, 2)}\n`);

console.log(
  `commit ${result.commit}; ${result.machine.cpus} x ${result.machine.cpu}; load ${loadBefore[0]?.toFixed(1)}`,
);
for (const group of GROUPS) {
  const some = measured.filter((one) => isIn(group, one));
  console.log(`\nreplies ${group}: ${some.length} (milliseconds)`);
  console.table(summary(some));
}
console.log(`recogniser ready from cold: ${result.recogniserReadyMs.join(', ')} ms`);
console.log(`not measured: ${missed.join('; ') || 'none'}`);
console.log('5000 changes of grammar, in Node with --expose-gc:', memory);
