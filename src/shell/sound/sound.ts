import type { Recogniser, Voice } from '../../core/ports';
import type { Result } from '../../core/result';
import type { ReadingAloud } from '../../core/voice-profile/reading-aloud';
import type { HearingAid } from '../../core/voice-profile/voice-profile';
import type { VoskNews } from '../../speech/vosk/recogniser';
import type { Settings } from '../../ui/setup/settings';
import type { VoiceChoice } from '../../ui/setup/voice-setup';
import { SharedEar } from './shared-ear';
import { SwitchedVoice } from './switched-voice';

/** A recogniser, and the microphone behind it for whoever records a note. */
export type EarMade = {
  readonly recogniser: Recogniser;
  readonly microphone: () => MediaStream | null;
  /** Another microphone was chosen. */
  readonly reopen: () => void;
  /** Only where the recogniser can hand out the sound of what it heard. */
  readonly keepSound?: (keep: boolean) => void;
  /** Null where it cannot learn from lines read aloud. */
  readonly reading: ReadingAloud | null;
};

/** Which microphone is wanted. */
export type MicrophoneWish = {
  /** Asked each time one is opened; empty for the machine's own choice. */
  readonly wanted: () => string;
  /** Told each time one is open: whether it stands in for the wanted one, which is not there. */
  readonly opened: (standsIn: boolean) => void;
};

/** What can be made once there is an audio context. */
export type SoundMakers = {
  /** Fitted to a voice, or to none. */
  readonly ear: (aid: HearingAid | null, microphone: MicrophoneWish) => EarMade;
  /** On a model of the person's own, fetched only when it is chosen. */
  readonly ownEar: (tell: (news: VoskNews) => void, microphone: MicrophoneWish) => Promise<EarMade>;
  /** The settings are asked before each sentence, so that a change of speed is heard at once. */
  readonly voice: (settings: () => Settings) => Voice;
  readonly systemVoice: (settings: () => Settings) => Voice;
};

export type SoundParts = {
  /** Opens the one audio context; it must be called inside a tap or a key. */
  readonly open: () => Promise<Result<SoundMakers, { readonly code: string }>>;
  /** These need no sound: the buttons and the typed words still work. */
  readonly typed: () => Recogniser;
  readonly silent: () => Voice;
  readonly systemVoices: () => Promise<readonly VoiceChoice[]>;
};

/** Ear and voice of the app. Both are there from the start, silent and typed, and become real with the first tap. */
export class Sound {
  readonly ear: SharedEar;
  readonly voice: SwitchedVoice;
  #makers: SoundMakers | null = null;
  #made: EarMade | null = null;
  #isRefused = false;
  #ear: Settings['recogniser'] = 'typed';
  #profile = '';
  #microphone = '';
  #changing: Promise<void> = Promise.resolve();
  #voice: Settings['voice'] = 'silent';

  constructor(
    private readonly parts: SoundParts,
    private readonly settings: () => Settings,
    private readonly tell: (news: VoskNews) => void,
    /** What is known of the voice with this id. */
    private readonly aidOf: (id: string) => Promise<HearingAid | null> = async () => null,
    private readonly unaided: () => void = () => undefined,
    private readonly opened: (standsIn: boolean) => void = () => undefined,
  ) {
    this.ear = new SharedEar(parts.typed());
    this.voice = new SwitchedVoice(parts.silent());
  }

  /** It was asked for and could not be had: work goes on without it. */
  get isRefused(): boolean {
    return this.#isRefused;
  }

  get isOpen(): boolean {
    return this.#makers !== null;
  }

  /** Something of ours is in the air, a reply or a recording: nobody is listened to. */
  get isSounding(): boolean {
    return this.voice.isSounding || this.ear.isShutBy('clip');
  }

  get microphone(): MediaStream | null {
    return this.#made?.microphone() ?? null;
  }

  /** True once there is sound. Asked again after a refusal it tries again. */
  async open(): Promise<boolean> {
    if (this.#makers) return true;
    const opened = await this.parts.open();
    this.#isRefused = !opened.ok;
    if (!opened.ok) return false;
    this.#makers = opened.value;
    this.apply();
    // The voice is fetched now, while the person chooses a job, and never before the first paint.
    this.voice.prepare([]);
    return true;
  }

  /** Brings ear and voice to what the settings ask for; whatever is as it should be stays. */
  apply(): void {
    const makers = this.#makers;
    if (!makers) return;
    const { recogniser, voice, voiceProfile, microphone } = this.settings();
    const isOtherVoice = recogniser === 'embedded' && voiceProfile !== this.#profile;
    if (recogniser !== this.#ear || isOtherVoice) {
      this.#ear = recogniser;
      this.#profile = voiceProfile;
      this.#changing = this.#changeEar(makers, recogniser);
    }
    // An ear that is still being made asks for itself.
    if (microphone !== this.#microphone) this.#made?.reopen();
    this.#microphone = microphone;
    this.#keepSound();
    if (voice !== this.#voice) {
      this.#voice = voice;
      this.voice.swap(this.#voiceMade(makers, voice));
    }
  }

  /** The ear listens with another recogniser; a slow one may come when something else has been chosen again. */
  async #changeEar(makers: SoundMakers, chosen: Settings['recogniser']): Promise<void> {
    const profile = this.#profile;
    const made = await this.#earMade(makers, chosen);
    if (this.#ear !== chosen || this.#profile !== profile) {
      made?.recogniser.close();
      return;
    }
    this.#made = made;
    this.#keepSound();
    this.ear.swap(made?.recogniser ?? this.parts.typed());
  }

  /** Nobody's profile costs no wait. */
  async #earMade(makers: SoundMakers, chosen: Settings['recogniser']): Promise<EarMade | null> {
    const wish: MicrophoneWish = { wanted: () => this.settings().microphone, opened: this.opened };
    switch (chosen) {
      case 'typed':
        return null;
      case 'own-model':
        return makers.ownEar(this.tell, wish);
      case 'embedded': {
        const made = makers.ear(this.#profile === '' ? null : await this.aidOf(this.#profile), wish);
        made.reading?.on((event) => {
          if (event.type === 'unaided') this.unaided();
        });
        return made;
      }
    }
  }

  /** The ear for lines read aloud, once it is there; null where what listens cannot learn. */
  async reading(): Promise<ReadingAloud | null> {
    await this.#changing;
    return this.#made?.reading ?? null;
  }

  /** A new model: what listens with the old one is made anew. */
  renewOwnEar(): void {
    if (this.#ear === 'own-model' && this.#makers) void this.#changeEar(this.#makers, 'own-model');
  }

  #keepSound(): void {
    this.#made?.keepSound?.(this.settings().keepHeard);
  }

  #voiceMade(makers: SoundMakers, voice: Settings['voice']): Voice {
    switch (voice) {
      case 'embedded':
        return makers.voice(this.settings);
      case 'system':
        return makers.systemVoice(this.settings);
      case 'silent':
        return this.parts.silent();
    }
  }
}
