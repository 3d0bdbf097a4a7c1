import { mkdirSync } from 'node:fs';
import { Bay } from './bay';
import { openContext } from './chromium';
import { TO_THE_FIRST_PASS } from './first-pass-words';
import { openSite } from './site';

// The README's pictures, taken anew: a job worked by typed words to the middle of a pass, then its day-book.

const SIZES = [
  { width: 800, height: 1280 },
  { width: 1280, height: 800 },
  { width: 1440, height: 900 },
  { width: 390, height: 844 },
];
const WORDS = [...TO_THE_FIRST_PASS, 'bolt two done', 'what torque', 'bolt three done', 'bolt four done'];
const folder = new URL('./screens/', import.meta.url).pathname;

mkdirSync(folder, { recursive: true });
const site = await openSite();
const context = await openContext();
const bay = new Bay(await context.newPage());
await bay.wireMicrophone();
await bay.open(site.address);
await bay.begin('Left head gasket');
for (const words of WORDS) await bay.type(words);
await bay.armed();
for (const [name, screen] of [
  ['bench', 'Bench'],
  ['record', 'Record'],
] as const) {
  if (screen !== 'Bench') await bay.go(screen);
  for (const viewport of SIZES) {
    await bay.page.setViewportSize(viewport);
    await bay.page.waitForTimeout(700);
    await bay.page.screenshot({ path: `${folder}${name}-${viewport.width}x${viewport.height}.png` });
  }
  await bay.page.setViewportSize({ width: 1280, height: 800 });
}
await context.close();
await site.close();
