import type { LogStore } from '../../core/log/log-store';
import type { Settings } from '../../ui/setup/settings';
import { DEFAULT_SETTINGS, rateStepped, readSettings, saveSettings } from './settings';

/** The settings as they are now. Each change is used at once and kept. */
export class SettingsDesk {
  #now = DEFAULT_SETTINGS;

  constructor(
    private readonly store: Pick<LogStore, 'setting' | 'saveSetting'>,
    private readonly use: (settings: Settings) => void,
  ) {}

  get now(): Settings {
    return this.#now;
  }

  async load(): Promise<void> {
    this.#now = await readSettings(this.store);
    this.use(this.#now);
  }

  async change(settings: Settings): Promise<void> {
    this.#now = settings;
    this.use(settings);
    await saveSettings(this.store, settings);
  }

  /** "Faster" and "slower": steps of speed, below nothing for slower. */
  faster(steps: number): void {
    void this.change({ ...this.#now, speechRate: rateStepped(this.#now.speechRate, steps) });
  }
}
