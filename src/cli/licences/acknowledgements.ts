import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type LicenceText, THIRD_PARTIES, type ThirdParty } from './table.ts';

const here = dirname(fileURLToPath(import.meta.url));
const packages = join(here, '../../../node_modules');

const read = (...path: readonly string[]): string => readFileSync(join(...path), 'utf8').trim();

function textOf(text: LicenceText): string {
  switch (text.from) {
    case 'package':
      return read(packages, text.package, text.file);
    case 'here':
      return read(here, text.file);
    case 'mit':
      return `${text.copyright}\n\n${read(here, 'mit.txt')}`;
  }
}

/** A part made by others as the program shows it: the words asked for, and then the licence in full. */
export type Acknowledgement = { readonly name: string; readonly licence: string; readonly text: string };

export const acknowledgements = (): readonly Acknowledgement[] =>
  THIRD_PARTIES.map(({ name, licence, acknowledgement, texts }) => ({
    name,
    licence,
    text: [...(acknowledgement ? [acknowledgement] : []), ...texts.map(textOf)].join('\n\n'),
  }));

/** All of it as one plain file, which lies beside the program wherever it is put. */
export const thirdPartyFile = (): string =>
  acknowledgements()
    .map(({ name, licence, text }) => `${name}\n${'='.repeat(name.length)}\nLicence: ${licence}\n\n${text}\n`)
    .join('\n\n');

/** The same in short, for a README. */
export function thirdPartyTable(parties: readonly ThirdParty[] = THIRD_PARTIES): string {
  const rows = parties.map(({ name, licence, does }) => `| ${name} | ${does} | ${licence} |`);
  const words = parties.flatMap(({ acknowledgement }) => acknowledgement ?? []);
  return ['| Part | What it does here | Licence |', '|---|---|---|', ...rows, '', ...words].join('\n');
}
