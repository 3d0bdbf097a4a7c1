import { render } from 'preact';
import { ok } from './core/result';
import { awakeKeeper } from './shell/keep-awake';
import { LANGUAGES, languageFor, loadLanguage } from './shell/language';
import { shippedDocuments } from './shell/library';
import { readSettings } from './shell/setup/settings';
import { Shell } from './shell/shell';
import { blobUrl, playSound } from './shell/sound/play-sound';
import { recordSound } from './shell/sound/record-sound';
import type { MicrophoneWish } from './shell/sound/sound';
import { earLanguage } from './speech/ear/ear-language';
import { typedRecogniser } from './speech/typed';
import { sha256Hex } from './store/hash';
import { openStore } from './store/open-store';
import { writerLock } from './store/writer-lock';
import { App } from './ui/app';
import { bringAll } from './ui/later';
import type { Settings } from './ui/setup/settings';
import { DEFAULT_SPEAKER } from './voice/flite/speakers';
import { silentVoice } from './voice/silent';
import { systemVoices } from './voice/system-voices';

// The composition root: the only place where adapters are made and put together.

const clock = { wall: () => Date.now(), mono: () => performance.now() };
// Where the browser has no lasting store the one in memory says so itself.
const { store } = await openStore();
const profile = languageFor((await readSettings(store)).language, navigator.languages);
const { tongue, screen: words, rest } = await loadLanguage(profile);
document.documentElement.lang = profile.code;

const save = (name: string, text: string | readonly string[], mime: string): void => {
  const url = URL.createObjectURL(new Blob([text].flat(), { type: mime }));
  const link = Object.assign(document.createElement('a'), { href: url, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
};

/** The microphone a recogniser is to open. */
const wished = ({ wanted, opened }: MicrophoneWish) => ({
  choice: () => ({ deviceId: wanted() === '' ? null : wanted(), echoCancellation: false }),
  opened,
});

/** A model of the person's own is rare, and what handles it is fetched only then. */
const models = async () => (await import('./speech/vosk/model-shelf')).modelShelf(new URL('.', document.baseURI).href);

/** Ear and voice come after the first paint and before the first tap; nothing that can be touched waits for them. */
const sounding = () =>
  Promise.all([
    import('./voice/audio-bus'),
    import('./voice/embedded'),
    import('./voice/earcons-only'),
    import('./voice/system'),
    import('./speech/embedded'),
  ]);

const rateOf = (settings: () => Settings) => () => ({ speaker: DEFAULT_SPEAKER, rate: settings().speechRate });

const shell = new Shell({
  store,
  scratchStore: async () => (await import('./store/memory-store')).memoryStore(),
  lock: writerLock(),
  hash: sha256Hex,
  clock,
  newId: () => crypto.randomUUID(),
  tongue,
  words,
  languages: LANGUAGES,
  documents: shippedDocuments(),
  after: (ms, run) => {
    const timer = setTimeout(run, ms);
    return () => clearTimeout(timer);
  },
  sound: {
    open: async () => {
      const [
        { openAudio },
        { embeddedMouth, embeddedVoice },
        { earconsOnly },
        { systemVoice },
        { embeddedRecogniser },
      ] = await sounding();
      const audio = await openAudio();
      if (!audio.ok) return audio;
      const ofSystem = (settings: () => Settings) =>
        systemVoice(
          clock,
          () => ({ voiceUri: settings().systemVoice, rate: settings().speechRate }),
          { code: profile.code, breath: tongue.breath },
          profile.builtInVoice ? embeddedMouth(rateOf(settings)) : earconsOnly(),
        );
      return ok({
        ear: (aid, microphone) => {
          const recogniser = embeddedRecogniser({
            context: audio.value,
            modelBase: new URL('model/', document.baseURI).href,
            language: earLanguage(tongue),
            microphone: wished(microphone),
            aid,
          });
          return {
            recogniser,
            microphone: recogniser.stream,
            reopen: recogniser.reopen,
            keepSound: recogniser.keepSound,
            reading: recogniser.reading,
          };
        },
        ownEar: async (onNews, microphone) => {
          const { voskRecogniser } = await import('./speech/vosk/recogniser');
          const recogniser = voskRecogniser({
            context: audio.value,
            page: new URL('vosk.html', document.baseURI).href,
            model: await models(),
            onNews,
            microphone: wished(microphone),
          });
          return { recogniser, microphone: recogniser.stream, reopen: recogniser.reopen, reading: null };
        },
        voice: (settings) =>
          profile.builtInVoice ? embeddedVoice(clock, rateOf(settings), tongue.breath) : ofSystem(settings),
        systemVoice: ofSystem,
      });
    },
    typed: typedRecogniser,
    silent: () => silentVoice(clock, { pace: 'as-spoken' }),
    systemVoices: () => systemVoices(profile.code),
  },
  clips: {
    record: recordSound,
    still: async (asking) => (await import('./shell/clips/take-still')).takeStill(asking),
    play: playSound,
    url: blobUrl,
    wav: async (samples, rateHz) =>
      (await import('./voice/flite/wav')).encodeWav({ samples: new Float32Array(samples), rateHz }),
  },
  microphones: {
    here: async () => (await import('./speech/microphones')).microphonesHere(),
    onChange: (changed) => void import('./speech/microphones').then((it) => it.onMicrophones(changed)),
  },
  models: {
    keep: async (archive, name, progress) => (await models()).keep(archive, name, progress),
    kept: async () => (await models()).kept(),
    clear: async () => (await models()).clear(),
  },
  acknowledgements: async () => (await import('virtual:acknowledgements')).default,
  keepAwake: awakeKeeper({ wakeLock: navigator.wakeLock, document }),
  reload: () => location.reload(),
  print: () => {
    draw();
    window.print();
  },
  save,
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
      ear={shell.earLine()}
      notices={shell.shownNotices}
      closing={shell.closing}
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
void sounding();
await rest();
await shell.load();

const keptOffline = async (): Promise<boolean> => {
  const { keepOffline } = await import('./offline/keep-offline');
  return keepOffline({
    model: profile.model,
    busy: () => shell.jobOpen,
    tell: (report) => {
      root.dataset.offline = report.state;
      shell.offline(report);
    },
  });
};
const follows = import.meta.env.PROD && (await keptOffline());
// What cannot be had now is asked for again when its screen is opened.
if (!follows) void bringAll().catch(() => undefined);
