import type { Reply } from '../core/phrasing/reply';
import type { EarView } from '../core/view/bench-view';
import { ledTo } from '../core/view/led-to';
import type { DeskView, HeardView } from '../machine/desk-parts';
import type { PlainKey, Say } from '../ui/words/words';

/** A quiet shop floor and a shout, in dB below full scale: the ends of the level meter. */
const QUIET_DB = -70;
const LOUD_DB = -10;

const SURE = 0.75;

/** A floor this high leaves no room for a voice above it: the buttons are surer. Found with the noise of RESULTS.md. */
export const TOO_LOUD_DB = -28;

/** A level in dB below full scale as a share of the meter, 0..1. */
export const loudness = (db: number): number => Math.min(1, Math.max(0, (db - QUIET_DB) / (LOUD_DB - QUIET_DB)));

/** What a screen of the ear is made of, whoever listens. */
export type EarSeen = Pick<DeskView, 'ear' | 'heard' | 'earsOff'>;

type EarNow = {
  /** While our own voice sounds nobody is listened to. */
  readonly isSpeaking: boolean;
  readonly isShut: boolean;
  readonly trouble: string | null;
  readonly say: Say;
  /** What the words heard last did, where they were taken. */
  readonly did: string;
};

/** The ear as the screen shows it. */
export function earScreen(desk: EarSeen, now: EarNow): EarView {
  const { ear, heard } = desk;
  return {
    state: earState(desk, now.isSpeaking, now.isShut),
    trouble: ear.fault ? now.trouble : null,
    level: loudness(ear.db),
    heard: heard && {
      words: heard.words,
      how: howSure(heard),
      did: heard.did === 'rejected' ? now.say(NOT_TAKEN[heard.outcome]) : now.did,
    },
  };
}

function howSure({ did, by, score }: HeardView): NonNullable<EarView['heard']>['how'] {
  if (did === 'rejected') return 'rejected';
  if (by !== 'voice') return by;
  return score >= SURE ? 'sure' : 'hardly-sure';
}

/** In the words of the day-book. What only asked, or was refused, changed nothing: the answer itself stands below. */
export function didSoFar({ job, entries }: DeskView, show: (replies: readonly Reply[]) => string, say: Say): string {
  const led = ledTo(job.plan, entries);
  return led.length > 0 ? show(led) : say('did-nothing');
}

const NOT_TAKEN = {
  score: 'not-taken-unsure',
  'no-path': 'not-taken-unknown',
  'not-a-command': 'not-taken-unknown',
  ambiguous: 'not-taken-two',
  stale: 'not-taken-late',
  almost: 'not-taken-value',
  filler: 'not-taken-other',
  decoy: 'not-taken-other',
  noise: 'not-taken-other',
  'too-short': 'not-taken-other',
  'too-long': 'not-taken-other',
  'too-quiet': 'not-taken-other',
  'own-voice': 'not-taken-other',
} as const satisfies Record<(HeardView & { readonly did: 'rejected' })['outcome'], PlainKey>;

/** `speaking` while our own voice sounds, `shut` while talk is only heard under a held button. */
export function earState({ ear, earsOff }: EarSeen, speaking: boolean, shut: boolean): EarView['state'] {
  if (ear.state === 'failed') return 'failed';
  if (ear.state === 'loading') return 'loading';
  if (speaking) return 'speaking';
  if (shut) return 'waiting';
  if (earsOff) return 'shut';
  return ear.floorDb > TOO_LOUD_DB ? 'too-loud' : 'listening';
}
