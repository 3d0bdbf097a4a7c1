import { mkdirSync, writeFileSync } from 'node:fs';
import { loadavg } from 'node:os';
import { parseArgs } from 'node:util';
import { chromiumPath } from '../browser/chromium';
import { openWatchedSite } from '../browser/watched-site';
import { circumstances } from '../soak/circumstances';
import { measureBusy } from './busy';
import { longRecord } from './long-record';
import { measureRecord } from './record';
import { watchScript } from './watched';

// npm run bench:screens: a record of 20,000 entries, and the screens worked by hand while the recogniser is busy, in
// Chromium with the built app. Printed and written down; no time is asserted. It fails where something does not work.

const { values } = parseArgs({
  options: {
    entries: { type: 'string', default: '20000' },
    out: { type: 'string', default: 'test-output/screens.json' },
  },
});
if (!chromiumPath) {
  console.log('NOT RUN: no Chromium was found. Install one, or name it in CHROMIUM.');
  process.exit(1);
}

const loadBefore = loadavg()[0];
const site = await openWatchedSite({ ear: watchScript('watch-ear.js') });
try {
  const record = await measureRecord(site, longRecord(Number(values.entries)));
  console.log(
    `record of ${record.entries} entries (${record.megabytes} MB), taken over in ${record.takenMs}; all in milliseconds`,
  );
  console.log(`from the tap to the first rows: ${record.firstRowsMs}; a jump: ${record.jumpMs}`);
  console.table({ 'frame, scrolling': record.frames, 'letter of a search': record.search });

  const busy = await measureBusy(site);
  const { commit, machine } = circumstances(0);
  const load = { before: loadBefore, after: loadavg()[0] };
  mkdirSync('test-output', { recursive: true });
  writeFileSync(values.out, `${JSON.stringify({ commit, machine, load, record, busy }, null, 2)}\n`);

  console.log(`commit ${commit}; ${machine.cpus} x ${machine.cpu}; load ${loadBefore?.toFixed(1)}`);
  const { ear } = busy;
  console.log(
    `\nworked by hand for ${ear.seconds} s while somebody talked: the recogniser worked ${ear.workedPercent} % of the time,`,
    `${ear.workedAboutPercent} % about a tap or key, at most ${ear.longestBlockMs} ms at once; it was decoding at`,
    `${ear.intoDecodingPercent} % of them, and came to an end with ${ear.utterances} utterances`,
  );
  console.log('from the tap or key to the frame with its answer, handed on to be painted:');
  console.table({ all: busy.all, ...busy.kinds });
  console.log('from the tap to what it was for:');
  console.table(busy.effects);
  console.log(`the slowest: ${busy.slowest.join('; ')}`);
  console.log(`tasks over 50 ms meanwhile: ${busy.longTasks.count}, the longest ${busy.longTasks.worst}`);
} catch (error) {
  console.error(`DOES NOT WORK: ${error instanceof Error ? error.message : error}`);
  process.exitCode = 1;
} finally {
  await site.close();
}
