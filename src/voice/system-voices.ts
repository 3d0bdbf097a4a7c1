/** A voice of the operating system that speaks without a network. */
export type SystemVoice = { readonly uri: string; readonly name: string; readonly language: string };

/** Browsers fill their list late and some never say when: we look again after this long, in milliseconds. */
const PATIENCE_MS = 1000;

/** The voices that may be chosen: English and on this machine, since a remote voice fails silently without a network. */
export async function systemVoices(
  synth: SpeechSynthesis | undefined = globalThis.speechSynthesis,
): Promise<readonly SystemVoice[]> {
  if (synth === undefined) return [];
  if (synth.getVoices().length === 0) await listFilled(synth);
  return synth.getVoices().filter(usable).map(described);
}

/** The voice as the browser knows it, if it is still there and still usable. */
export function systemVoiceAt(uri: string, synth: SpeechSynthesis): SpeechSynthesisVoice | null {
  return synth.getVoices().find((voice) => voice.voiceURI === uri && usable(voice)) ?? null;
}

const usable = ({ localService, lang }: SpeechSynthesisVoice): boolean => localService && /^en\b/i.test(lang);

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
