import { render } from 'preact';
import { ok } from './core/result';
import { keepAwake } from './shell/keep-awake';
import { builtInLanguage } from './shell/language';
import { shippedDocuments } from './shell/library';
import { Shell } from './shell/shell';
import { earLexicon } from './speech/ear/ear-lexicon';
import { embeddedRecogniser } from './speech/embedded';
import { typedRecogniser } from './speech/typed';
import { sha256Hex } from './store/hash';
import { openStore } from './store/open-store';
import { App } from './ui/app';
import { openAudio } from './voice/audio-bus';
import { embeddedVoice } from './voice/embedded';
import { silentVoice } from './voice/silent';

// The composition root: the only place where adapters are made and put together.

const clock = { wall: () => Date.now(), mono: () => performance.now() };
const { tongue, screen: words } = builtInLanguage();
const { store, fault } = await openStore();

const shell = new Shell({
  store,
  hash: sha256Hex,
  clock,
  newId: () => crypto.randomUUID(),
  tongue,
  words,
  documents: shippedDocuments(),
  after: (ms, run) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
  openSound: async (settings) => {
    const audio = await openAudio();
    if (!audio.ok) return audio;
    return ok({
      recogniser: embeddedRecogniser({
        context: audio.value,
        modelBase: new URL('model/', document.baseURI).href,
        lexicon: earLexicon(tongue.lexicon),
        microphone: { deviceId: null, echoCancellation: false },
      }),
      voice: embeddedVoice(clock, () => ({ speaker: 'slt', rate: settings.speechRate })),
    });
  },
  withoutSound: () => ({ recogniser: typedRecogniser(), voice: silentVoice(clock, { pace: 'as-spoken' }) }),
  keepAwake,
  print: () => window.print(),
  save: (name, text, mime) => {
    const url = URL.createObjectURL(new Blob([text], { type: mime }));
    const link = Object.assign(document.createElement('a'), { href: url, download: name });
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 10_000);
  },
});

const root = document.getElementById('app');
if (!root) throw new Error('the page has no place for the app');

let drawing = false;
const draw = (): void => {
  drawing = false;
  const { settings } = shell;
  render(
    <App
      screen={shell.screen()}
      jobOpen={shell.jobOpen}
      notices={shell.shownNotices}
      theme={settings.theme}
      textSize={settings.textSize}
      words={words}
      on={shell.on}
    />,
    root,
  );
  // Where the app stands, for tests and for whoever automates it: the ear, the armed grammar, the place, the log's length.
  Object.assign(root.dataset, shell.status());
  Object.assign(root, { entries: shell.entries });
};
shell.subscribe(() => {
  if (drawing) return;
  drawing = true;
  requestAnimationFrame(draw);
});
draw();
void store.persist();
await shell.load();
if (fault) shell.warnNotLasting();
