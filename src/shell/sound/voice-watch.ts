import type { Settings } from '../../ui/setup/settings';
import type { VoiceChoice } from '../../ui/setup/voice-setup';
import type { Rooms } from '../rooms';
import type { ShellParts } from '../shell-parts';

/** The voices this machine has, and word of it where one falls silent or there is none to speak with. */
export class VoiceWatch {
  choices: readonly VoiceChoice[] = [];
  readonly #hasBuiltIn: boolean;

  constructor(
    private readonly rooms: Pick<Rooms, 'sound' | 'notices' | 'say'>,
    private readonly parts: Pick<ShellParts, 'sound' | 'tongue'>,
    private readonly settings: () => Settings,
  ) {
    this.#hasBuiltIn = parts.tongue.profile.builtInVoice;
    const { sound, notices, say } = rooms;
    sound.voice.on((event) => {
      if (event.type === 'failed' && event.code === 'system-voice-stalled')
        notices.news('voice', say(this.#hasBuiltIn ? 'voice-fallback' : 'voice-stalled'));
    });
  }

  async look(): Promise<void> {
    const { notices, say } = this.rooms;
    this.choices = await this.parts.sound.systemVoices();
    const isMute = !this.#hasBuiltIn && this.choices.length === 0 && this.settings().voice !== 'silent';
    if (isMute) notices.news('voice', say('voice-none'));
  }
}
