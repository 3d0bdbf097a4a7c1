import { assertNever } from '../../result';
import type { Phrase } from '../grammar';
import type { JsgfFile } from './parse-jsgf';

/** A grammar file as text: reading it back gives the same phrases. Comments are not kept. */
export function printJsgf(file: JsgfFile): string {
  const imports = file.imports.map((name) => `import <${name}>;`);
  const rules = file.rules.map((r) => `${r.isPublic ? 'public ' : ''}<${r.name}> = ${printPhrase(r.phrase)};`);
  return ['#JSGF V1.0;', `grammar ${file.name};`, ...imports, ...rules, ''].join('\n');
}

/** How tightly a place binds what is printed there: alternatives bind loosest, `*`, `+` and tags tightest. */
type Binding = 'alternatives' | 'sequence' | 'unary';

export function printPhrase(phrase: Phrase, binding: Binding = 'alternatives'): string {
  switch (phrase.kind) {
    case 'word':
      return /^[^\s\uFEFF;=|*+<>()[\]{}"/\\]+$/.test(phrase.text) ? phrase.text : `"${escaped(phrase.text, '"')}"`;
    case 'rule':
      return `<${phrase.name}>`;
    case 'null':
      return '<NULL>';
    case 'void':
      return '<VOID>';
    case 'optional':
      return `[${printPhrase(phrase.part)}]`;
    case 'repeat':
      return printPhrase(phrase.part, 'unary') + (phrase.least === 0 ? '*' : '+');
    case 'tagged':
      return `${printPhrase(phrase.part, 'unary')} {${escaped(phrase.tag, '{}')}}`;
    case 'seq': {
      const text = phrase.parts.map((part) => printPhrase(part, part.kind === 'seq' ? 'unary' : 'sequence')).join(' ');
      return binding === 'unary' ? `(${text})` : text;
    }
    case 'oneOf': {
      const text = phrase.parts
        .map((part, index) => weightText(phrase.weights?.[index]) + printPhrase(part, 'sequence'))
        .join(' | ');
      return binding === 'alternatives' ? text : `(${text})`;
    }
    default:
      return assertNever(phrase);
  }
}

const weightText = (weight: number | undefined): string => (weight === undefined ? '' : `/${weight}/ `);

/** A backslash before each backslash and each of the given signs. */
const escaped = (text: string, signs: string): string =>
  [...text].map((sign) => (sign === '\\' || signs.includes(sign) ? `\\${sign}` : sign)).join('');
