import type { EarView } from '../core/view/bench-view';
import type { DeskView } from '../machine/desk-parts';

/** A quiet shop floor and a shout, in dB below full scale: the ends of the level meter. */
const QUIET_DB = -70;
const LOUD_DB = -10;

const SURE = 0.75;

/** A floor this high leaves no room for a voice above it: the buttons are surer. Found with the noise of RESULTS.md. */
export const TOO_LOUD_DB = -28;

/** A level in dB below full scale as a share of the meter, 0..1. */
export const loudness = (db: number): number => Math.min(1, Math.max(0, (db - QUIET_DB) / (LOUD_DB - QUIET_DB)));

/** What a screen of the ear is made of, whoever listens. */
export type EarSeen = Pick<DeskView, 'ear' | 'heard' | 'said' | 'earsOff'>;

/** The ear as the screen shows it. `speaking` while our own voice sounds: then nobody is listened to. */
export function earScreen(desk: EarSeen, speaking: boolean, shut: boolean, trouble: string | null): EarView {
  const { ear, heard } = desk;
  return {
    state: stateOf(desk, speaking, shut),
    trouble: ear.fault ? trouble : null,
    level: loudness(ear.db),
    heard: heard && {
      words: heard.words,
      sureness: heard.did === 'rejected' ? 'rejected' : heard.score >= SURE ? 'sure' : 'fair',
      did: heard.did === 'command' ? (desk.said?.shown ?? '') : '',
    },
  };
}

function stateOf({ ear, earsOff }: EarSeen, speaking: boolean, shut: boolean): EarView['state'] {
  if (ear.state === 'failed') return 'failed';
  if (ear.state === 'loading') return 'loading';
  if (speaking) return 'speaking';
  if (shut) return 'waiting';
  if (earsOff) return 'shut';
  return ear.floorDb > TOO_LOUD_DB ? 'too-loud' : 'listening';
}
