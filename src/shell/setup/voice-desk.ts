import type { LogStore } from '../../core/log/log-store';
import { assertNever } from '../../core/result';
import type { Lesson } from '../../core/voice-profile/reading-aloud';
import type { ReadingView, VoiceLine } from '../../core/voice-profile/reading-view';
import { type HearingAid, PROFILE_VERSION, type VoiceProfile } from '../../core/voice-profile/voice-profile';
import type { UiEvent } from '../../ui/events';
import type { Say } from '../../ui/words/words';
import type { NoticeBoard } from '../notice-board';
import { type ReadingParts, ReadingSession } from './reading-session';
import { clearShelf, keepProfile, readShelf, removeProfile } from './voice-shelf';

export type VoiceEvent = Extract<UiEvent, { readonly type: `reading-${string}` | 'delete-voice' }>;

export type VoiceDeskParts = Omit<ReadingParts, 'keep'> & {
  readonly store: Pick<LogStore, 'setting' | 'saveSetting'>;
  readonly newId: () => string;
  /** Milliseconds of UTC. */
  readonly now: () => number;
  readonly say: Say;
  readonly notices: NoticeBoard;
  /** Whose profile listens now, and from now on; empty for nobody's. */
  readonly chosen: () => string;
  readonly choose: (id: string) => Promise<void>;
};

/** Keeps the profiles of this machine, and makes new ones from lines read aloud. */
export class VoiceDesk {
  #profiles: readonly VoiceProfile[] = [];
  #session: ReadingSession | null = null;
  #isAsking = false;

  constructor(private readonly parts: VoiceDeskParts) {}

  get view(): ReadingView {
    return this.#session?.view ?? { state: this.#isAsking ? 'asking' : 'closed' };
  }

  get lines(): readonly VoiceLine[] {
    return this.#profiles.map(({ id, person, headset }) => ({ id, person, headset }));
  }

  /** Reads what is kept. A damaged profile is told of and left aside. */
  async look(): Promise<void> {
    const { profiles, faults } = await readShelf(this.parts.store);
    this.#profiles = profiles;
    const { notices, say } = this.parts;
    if (faults.length > 0) notices.news('voice-profiles', say('profiles-damaged', { count: faults.length }));
    this.parts.changed();
  }

  /** What the ear needs of the chosen profile; null where there is none such any more. */
  async aid(id: string): Promise<HearingAid | null> {
    await this.look();
    return this.#profiles.find((profile) => profile.id === id) ?? null;
  }

  /** The ear could not use the profile it was given. */
  unaided(): void {
    this.parts.notices.news('voice-profiles', this.parts.say('profile-unfit'));
  }

  async answer(event: VoiceEvent): Promise<void> {
    switch (event.type) {
      case 'reading-open':
        this.#isAsking = true;
        return;
      case 'reading-begin':
        this.#session?.stop();
        this.#session = new ReadingSession({
          ...this.parts,
          keep: (lesson) => this.#keep(event.person, event.headset, lesson),
        });
        return this.#session.begin();
      case 'reading-skip':
        return this.#session?.skip();
      case 'reading-close':
        this.#session?.stop();
        this.#session = null;
        this.#isAsking = false;
        return;
      case 'delete-voice':
        await removeProfile(this.parts.store, event.id);
        if (this.parts.chosen() === event.id) await this.parts.choose('');
        return this.look();
      default:
        assertNever(event);
    }
  }

  async clear(): Promise<void> {
    await clearShelf(this.parts.store);
    this.#profiles = [];
  }

  async #keep(person: string, headset: string, lesson: Lesson): Promise<boolean> {
    const { store, newId, now, choose } = this.parts;
    const profile: VoiceProfile = {
      ...lesson,
      version: PROFILE_VERSION,
      id: newId(),
      person,
      headset,
      madeAt: now(),
    };
    if (!(await keepProfile(store, profile))) return false;
    await this.look();
    await choose(profile.id);
    return true;
  }
}
