import type { Wrench } from '../../core/fastening/wrench';

export type Theme = 'system' | 'day' | 'dim';
export type TextSize = 'usual' | 'large' | 'largest';

/** What Setup can change, as the settings store keeps it. */
export type Settings = {
  /** The code of a language of the program; empty for the one that the browser asks for. */
  readonly language: string;
  readonly theme: Theme;
  readonly textSize: TextSize;
  readonly people: readonly string[];
  readonly wrenches: readonly Wrench[];
  /** The units shown small beside the printed figure, which always comes first and is the one that counts. */
  readonly torqueUnit: 'as-printed' | 'N·m' | 'lbf·ft' | 'lbf·in' | 'kgf·m';
  readonly volumeUnit: 'as-printed' | 'L' | 'US qt' | 'imp qt';
  /** Whether new jobs begin with numbers only; the spoken words change it for a job. */
  readonly terse: boolean;
  readonly voice: 'embedded' | 'system' | 'silent';
  /** Which voice of the machine, by its address; empty until one is chosen. */
  readonly systemVoice: string;
  /** 0.7 slow to 1.3 fast; 1 as recorded. */
  readonly speechRate: number;
  /** Which microphone, by the id the browser gives it on this machine; empty for the machine's own choice. */
  readonly microphone: string;
  /** What that one is called, for when it is not there to be asked. */
  readonly microphoneName: string;
  readonly talk: 'always' | 'pedal';
  readonly recogniser: 'embedded' | 'own-model' | 'typed';
  /** Whether the sound of what was heard is kept with its job. */
  readonly keepHeard: boolean;
  /** Whose voice at which microphone the embedded recogniser is fitted to, by id; empty for nobody's. */
  readonly voiceProfile: string;
};

/** One setting and its new value, kept together by type. */
export type SettingChange = {
  readonly [K in keyof Settings]: { readonly type: 'setting-changed'; readonly key: K; readonly value: Settings[K] };
}[keyof Settings];
