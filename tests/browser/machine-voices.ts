import type { Page } from 'playwright-core';

type Told = { readonly voice: string; readonly text: string };

/** A machine with voices of its own, the last of them on a server. They take no time; what each was told is written down. */
export async function machineVoices(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const voice = (name: string, localService: boolean) => ({
      voiceURI: `voice:${name}`,
      name,
      lang: 'en-GB',
      localService,
    });
    const told: Told[] = [];
    class Utterance {
      voice: { readonly name: string } | null = null;
      onstart: () => void = () => undefined;
      onend: () => void = () => undefined;
      constructor(readonly text: string) {}
    }
    const synth = Object.assign(new EventTarget(), {
      speaking: false,
      pending: false,
      getVoices: () => [voice('Anvil', true), voice('Bellows', true), voice('Cloud', false)],
      cancel: () => undefined,
      speak: (utterance: Utterance) => {
        told.push({ voice: utterance.voice?.name ?? '', text: utterance.text });
        setTimeout(() => {
          utterance.onstart();
          utterance.onend();
        });
      },
    });
    Object.defineProperty(window, 'speechSynthesis', { value: synth });
    Object.assign(window, { SpeechSynthesisUtterance: Utterance, told });
  });
}

/** What the voice with this name was told last. */
export const toldTo = (page: Page, name: string): Promise<string> =>
  page.evaluate(
    (voice) => (window as unknown as { told: Told[] }).told.findLast((one) => one.voice === voice)?.text ?? '',
    name,
  );
