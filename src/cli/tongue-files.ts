import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { type CardWords, cardWordsOf } from '../core/card/card-words';
import { type Tongue, tongueOf } from '../core/tongue';

const grammars = fileURLToPath(new URL('../../grammars/', import.meta.url));

/** A language read from its folder under grammars/. A broken one stops the program: its issues are printed whole. */
export function readTongue(language: string): Tongue {
  const read = (name: string): string => readFileSync(`${grammars}${language}/${name}`, 'utf8');
  const tongue = tongueOf({
    commands: read('commands.jsgf'),
    numbers: read('numbers.jsgf'),
    lexicon: read('lexicon.txt'),
    replies: parse(read('replies.yaml')),
  });
  if (!tongue.ok)
    throw new Error(`grammars/${language} is broken:\n${tongue.error.map((e) => JSON.stringify(e)).join('\n')}`);
  return tongue.value;
}

/** The words of the job card, from the texts of the screens. */
export const readCardWords = (language: string): CardWords =>
  cardWordsOf(parse(readFileSync(`${grammars}${language}/screen.yaml`, 'utf8')));
