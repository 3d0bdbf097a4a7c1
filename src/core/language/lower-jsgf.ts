import type { LiveGrammar, Phrase } from './grammar';
import { printPhrase } from './jsgf/print-jsgf';
import { rulesIn } from './jsgf/references';
import { oneOf, sharingEnds, sharingStarts, withParts } from './phrase';
import { plainWords } from './words';

export type JsgfOptions = {
  /** Absorbs other speech: a loop over the recogniser's one-phone words, at this weight against the commands' 1. */
  readonly filler?: { readonly weight: number; readonly phones: readonly string[] } | null;
  /** Stray words listed on purpose, to be heard as themselves and rejected by `interpret`. */
  readonly decoys?: readonly string[];
};

const UTTERANCE_RULE = 'utterance';

/**
 * A live grammar as one JSGF text for the embedded recogniser: `public <utterance>`, all words in lower case, no tags
 * and no imports. Only the parts that commands reach are printed, since the recogniser expands every reference.
 */
export function toJsgf(live: LiveGrammar, { filler, decoys = [] }: JsgfOptions = {}): string {
  const commands = live.commands.map(({ rule, phrase }) => [`command-${rule}`, phrase] as const);
  const parts = reached(live).map((name) => [name, live.parts[name]] as const);
  const stray = decoys.map((text) => plainWords(text).join(' ')).filter((text) => text !== '');
  const loop = filler ? [`/${filler.weight}/ (${filler.phones.join(' | ')})+`] : [];
  const weight = filler ? '/1/ ' : '';
  const heard = [...(commands.length > 0 ? ['<command>'] : []), ...(stray.length > 0 ? ['<decoy>'] : [])];
  return [
    '#JSGF V1.0;',
    'grammar live;',
    `public <${UTTERANCE_RULE}> = ${[...heard.map((rule) => weight + rule), ...loop].join(' | ') || '<VOID>'};`,
    ...(commands.length > 0 ? [`<command> = ${commands.map(([name]) => `<${name}>`).join(' | ')};`] : []),
    ...(stray.length > 0 ? [`<decoy> = ${stray.join(' | ')};`] : []),
    ...[...commands, ...parts].flatMap(([name, phrase]) =>
      phrase ? [`<${name}> = ${printPhrase(sharing(untagged(phrase)))};`] : [],
    ),
    '',
  ].join('\n');
}

/** The parts that the commands refer to, directly or through each other. */
function reached(live: LiveGrammar): readonly string[] {
  const names = new Set<string>();
  const open = live.commands.flatMap((command) => rulesIn(command.phrase));
  for (let name = open.pop(); name !== undefined; name = open.pop()) {
    const phrase = names.has(name) ? undefined : live.parts[name];
    names.add(name);
    if (phrase) open.push(...rulesIn(phrase));
  }
  return [...names];
}

const untagged = (phrase: Phrase): Phrase =>
  phrase.kind === 'tagged' ? untagged(phrase.part) : withParts(phrase, untagged);

/** Alternatives that end or begin alike say it once: each mention of a slot costs a copy of all its words. */
function sharing(phrase: Phrase): Phrase {
  if (phrase.kind !== 'oneOf' || phrase.weights) return phrase;
  const sequences = phrase.parts.map((part) => (part.kind === 'seq' ? part.parts : [part]));
  const endsInRule = (sequence: readonly Phrase[]): boolean => sequence.at(-1)?.kind === 'rule';
  return oneOf([
    sharingEnds(sequences.filter(endsInRule)),
    sharingStarts(sequences.filter((sequence) => !endsInRule(sequence))),
  ]);
}
