import { fail, ok, type Result } from '../result';
import { CEPSTRA, type MeanTransform, PROFILE_VERSION, type VoiceProfile } from './voice-profile';

export type ProfileFault =
  | { readonly code: 'damaged'; readonly at: string }
  | { readonly code: 'newer'; readonly version: number };

/** A diagonal outside this, or any other figure above it, is no person's voice but a broken file. */
const LEAST_TURN = 0.2;
const MOST_TURN = 3;
const MOST_SHIFT = 60;

/** A stored profile, checked to the last figure: a wrong one would make the ear deaf in a way that nobody could see. */
export function readVoiceProfile(raw: unknown): Result<VoiceProfile, ProfileFault> {
  const given = fieldsOf(raw);
  const version = given.get('version');
  if (typeof version === 'number' && version > PROFILE_VERSION) return fail({ code: 'newer', version });
  const model = fieldsOf(given.get('model'));
  const means = given.get('means');
  const checks: readonly (readonly [string, boolean])[] = [
    ['version', version === PROFILE_VERSION],
    ['id', isText(given.get('id'))],
    ['person', isText(given.get('person'))],
    ['headset', typeof given.get('headset') === 'string'],
    ['madeAt', isWithin(given.get('madeAt'), 0, Number.MAX_SAFE_INTEGER)],
    ['model.folder', isText(model.get('folder'))],
    ['model.checksum', isWithin(model.get('checksum'), 0, 2 ** 32 - 1)],
    ['voiceDb', isWithin(given.get('voiceDb'), -100, 0)],
    ['noiseDb', isWithin(given.get('noiseDb'), -100, 0)],
    ['means', means === null || isTransform(means)],
    ['sureness', given.get('sureness') === 'sure' || given.get('sureness') === 'fair'],
  ];
  const wrong = checks.find(([, isRight]) => !isRight);
  // Every field of the type has been looked at above.
  return wrong ? fail({ code: 'damaged', at: wrong[0] }) : ok(raw as VoiceProfile);
}

/** Whether a transform is one that a voice can have: finite, of the right size, and not far from leaving things alone. */
export function isTransform(raw: unknown): raw is MeanTransform {
  const given = fieldsOf(raw);
  const turn = given.get('turn');
  const shift = given.get('shift');
  return (
    isRow(shift, (value) => isWithin(value, -MOST_SHIFT, MOST_SHIFT)) &&
    Array.isArray(turn) &&
    turn.length === CEPSTRA &&
    turn.every((row, at) =>
      isRow(row, (value, column) => isWithin(value, column === at ? LEAST_TURN : -MOST_TURN, MOST_TURN)),
    )
  );
}

const isRow = (raw: unknown, isRight: (value: unknown, column: number) => boolean): boolean =>
  Array.isArray(raw) && raw.length === CEPSTRA && raw.every(isRight);

const isText = (raw: unknown): boolean => typeof raw === 'string' && raw !== '';

const isWithin = (raw: unknown, least: number, most: number): boolean =>
  typeof raw === 'number' && Number.isFinite(raw) && raw >= least && raw <= most;

const fieldsOf = (raw: unknown): ReadonlyMap<string, unknown> =>
  new Map(typeof raw === 'object' && raw !== null ? Object.entries(raw) : []);
