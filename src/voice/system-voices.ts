/** A voice of the operating system that speaks without a network. */
export type SystemVoice = { readonly uri: string; readonly name: string; readonly language: string };

/** Browsers fill their list late and some never say when: we look again after this long, in milliseconds. */
const PATIENCE_MS = 1000;

/** The voices that may be chosen: of the language and on this machine, since a remote one fails silently without a network. */
export async function systemVoices(
  language: string,
  synth: SpeechSynthesis | undefined = globalThis.speechSynthesis,
): Promise<readonly SystemVoice[]> {
  if (synth === undefined) return [];
  if (synth.getVoices().length === 0) await listFilled(synth);
  return usableVoices(language, synth).map(described);
}

/** The voice as the browser knows it, if it is still there and still usable; else the first of its language. */
export function systemVoiceAt(uri: string, language: string, synth: SpeechSynthesis): SpeechSynthesisVoice | null {
  const voices = usableVoices(language, synth);
  return voices.find(({ voiceURI }) => voiceURI === uri) ?? voices[0] ?? null;
}

/** Tags come as "fr-FR" and, from some systems, as "fr_FR". */
const usableVoices = (language: string, synth: SpeechSynthesis): readonly SpeechSynthesisVoice[] =>
  synth
    .getVoices()
    .filter(({ localService, lang }) => localService && lang.toLowerCase().split(/[-_]/)[0] === language);

function described({ voiceURI, name, lang }: SpeechSynthesisVoice): SystemVoice {
  return { uri: voiceURI, name, language: lang.replace('_', '-') };
}

function listFilled(synth: SpeechSynthesis): Promise<void> {
  return new Promise((resolve) => {
    const filled = (): void => {
      clearTimeout(timer);
      synth.removeEventListener('voiceschanged', filled);
      resolve();
    };
    const timer = setTimeout(filled, PATIENCE_MS);
    synth.addEventListener('voiceschanged', filled);
  });
}
