import type { Recogniser } from '../../core/ports';
import type { MicrophonesFound } from '../../speech/microphones';

export type MicrophoneParts = {
  readonly here: () => Promise<MicrophonesFound>;
  /** Calls back when one is plugged in or pulled out. */
  readonly onChange: (changed: () => void) => void;
};

type ListParts = {
  readonly microphones: MicrophoneParts;
  readonly ear: Pick<Recogniser, 'on'>;
  readonly changed: () => void;
};

/** The microphones that can be chosen, as they come and go. */
export class MicrophoneList {
  /** Null until it was looked. */
  now: MicrophonesFound | null = null;

  constructor(private readonly parts: ListParts) {
    const { microphones, ear } = parts;
    microphones.onChange(() => void this.look());
    // With the first one that is opened the browser gives their names.
    ear.on(({ type }) => {
      if (type === 'ready') void this.look();
    });
  }

  async look(): Promise<void> {
    this.now = await this.parts.microphones.here();
    this.parts.changed();
  }
}
