import type { ReadingView, VoiceLine } from '../../core/voice-profile/reading-view';
import type { CameraCheck } from '../../ui/setup/camera-setup';
import type { MicrophoneCheck, NoiseCheck } from '../../ui/setup/listening-setup';
import type { Microphones } from '../../ui/setup/microphone-choice';
import type { SetupDesk, SetupDeskParts } from './setup-desk';

type Shown = {
  readonly microphones: Microphones;
  readonly microphone: MicrophoneCheck;
  readonly noise: NoiseCheck;
  readonly camera: CameraCheck;
  readonly voices: readonly VoiceLine[];
  readonly reading: ReadingView;
};

/** The door to what only Setup does, whose code is fetched when Setup or a voice profile asks for it, and not before. */
export class SetupRoom {
  #desk: SetupDesk | null = null;
  #coming: Promise<SetupDesk> | null = null;

  constructor(private readonly parts: SetupDeskParts) {}

  desk(): Promise<SetupDesk> {
    this.#coming ??= import('./setup-desk').then(({ setupDesk }) => {
      this.#desk = setupDesk(this.parts);
      return this.#desk;
    });
    return this.#coming;
  }

  /** Nothing before it is there. */
  shown(): Partial<Shown> {
    if (!this.#desk) return {};
    const { checks, voices, microphones, camera } = this.#desk;
    return {
      microphones: microphones.now,
      microphone: checks.microphone,
      noise: checks.noise,
      camera: camera.now,
      voices: voices.lines,
      reading: voices.view,
    };
  }
}
