import { mend } from '../../mend';
import { Field } from '../../phrasing/field';
import type { ReplyIssue } from '../../phrasing/reply-issue';
import { fail, ok, type Result } from '../../result';

/** A phone of the acoustic model of a language, by the name that its dictionary uses. */
export type Phone = string;

/** Voiced, nasal, affricate, long: 0 or 1. Place: 0 front, 1 middle, 2 back. Glide: made like a vowel. */
export type Features = readonly [
  voiced: number,
  nasal: number,
  affricate: number,
  long: number,
  place: number,
  glide: number,
];

/** The first two formants, in hertz. */
export type Formants = readonly [first: number, second: number];

/** A steady vowel ends as it begins. */
export type Vowel = { readonly from: Formants; readonly to: Formants; readonly isNasal: boolean };

/** How the phones of one language sound, from its sounds.yaml. */
export type Sounds = {
  readonly phones: readonly Phone[];
  readonly consonants: ReadonlyMap<Phone, Features>;
  readonly vowels: ReadonlyMap<Phone, Vowel>;
  /** A consonant and the vowel it is a short form of. */
  readonly glides: readonly (readonly [Phone, Phone])[];
  readonly weak: ReadonlySet<Phone>;
  readonly swallowed: ReadonlySet<Phone>;
};

/** Reads the plain data of a file of sounds. All issues are collected, each with its place in the file. */
export function readSounds(raw: unknown): Result<Sounds, readonly ReplyIssue[]> {
  const issues: ReplyIssue[] = [];
  const file = Field.root(raw, issues).only(['consonants', 'vowels', 'nasal', 'glides', 'weak', 'swallowed']);
  const [consonants, vowels] = [file.key('consonants'), file.key('vowels')];
  const phones = [...consonants.keys(), ...vowels.keys()];
  const phone = (field: Field): Phone => {
    const name = field.text();
    if (!phones.includes(name)) field.blame('unknown-key', mend('use-one-of', phones.join(', ')), name);
    return name;
  };
  const nasal = new Set(file.key('nasal').items().map(phone));
  const sounds: Sounds = {
    phones,
    consonants: new Map(consonants.keys().map((name) => [name, features(consonants.key(name))])),
    vowels: new Map(vowels.keys().map((name) => [name, { ...formants(vowels.key(name)), isNasal: nasal.has(name) }])),
    glides: file
      .key('glides')
      .items()
      .map((pair) => {
        const [consonant, vowel] = exactly(pair, [2]).map(phone);
        return [consonant ?? '', vowel ?? ''];
      }),
    weak: new Set(file.key('weak').items().map(phone)),
    swallowed: new Set(file.key('swallowed').items().map(phone)),
  };
  return issues.length > 0 ? fail(issues) : ok(sounds);
}

function features(field: Field): Features {
  const [voiced = 0, nasal = 0, affricate = 0, long = 0, place = 0, glide = 0] = numbers(field, [6]);
  return [voiced, nasal, affricate, long, place, glide];
}

function formants(field: Field): Omit<Vowel, 'isNasal'> {
  const [first = 0, second = 0, third = first, fourth = second] = numbers(field, [2, 4]);
  return { from: [first, second], to: [third, fourth] };
}

const numbers = (field: Field, counts: readonly number[]): readonly number[] =>
  exactly(field, counts).map((item) => item.number());

function exactly(field: Field, counts: readonly number[]): readonly Field[] {
  const items = field.items();
  if (!counts.includes(items.length)) field.blame('wrong-count', mend('so-many', counts.join(', ')));
  return items;
}
