import { readFile, writeFile } from 'node:fs/promises';
import { BODIES, type Form, QUESTIONS, WRENCH } from '../core/job/entry-forms';
import { LOG_VERSION } from '../core/log/version';
import { FASTENER_COLUMNS } from '../core/record/fastener-table';
import { assertNever } from '../core/result';
import { between } from './generated';
import { COLUMNS, FIELDS, KINDS, QUESTION_KINDS } from './log-format/meanings';
import { isRunDirectly } from './procedure/run-directly';

const PAGE = new URL('../core/log/README.md', import.meta.url);

/** The page on the log with its generated parts written anew; what stands between them is left as it is. */
export function logPageFrom(page: string): string {
  const parts = {
    version: [`Entries are written in version ${LOG_VERSION} now.`],
    kinds: kindTable(KINDS, BODIES),
    questions: kindTable(QUESTION_KINDS, QUESTIONS),
    fields: fieldTable({ ...BODIES, ...QUESTIONS }),
    wrench: fieldTable({ wrench: WRENCH }),
    columns: ['| column | holds |', '| --- | --- |', ...FASTENER_COLUMNS.map((c) => `| ${c} | ${COLUMNS[c]} |`)],
  };
  return Object.entries(parts).reduce((text, [name, lines]) => between(text, name, lines), page);
}

/** Every field by its kind, as the meanings name it. A test holds that each has one and that none is idle. */
export const logFields = (): readonly (readonly [kind: string, field: string])[] =>
  [...Object.entries(BODIES), ...Object.entries(QUESTIONS), ['wrench', WRENCH] as const].flatMap(([kind, fields]) =>
    Object.keys(fields).map((field) => [kind, field] as const),
  );

export const meaningOf = (kind: string, field: string): string | undefined =>
  FIELDS[`${kind} ${field}`] ?? FIELDS[field];

type Shapes = Readonly<Record<string, Readonly<Record<string, Form>>>>;

const kindTable = (says: Readonly<Record<string, string>>, shapes: Shapes): readonly string[] => [
  '| kind | says | fields |',
  '| --- | --- | --- |',
  ...Object.entries(shapes).map(
    ([kind, fields]) =>
      `| \`${kind}\` | ${says[kind] ?? ''} | ${Object.keys(fields)
        .map((field) => `\`${field}\``)
        .join(', ')} |`,
  ),
];

/** Every field once; where it holds or means different things in different kinds, once for each of them. */
function fieldTable(shapes: Shapes): readonly string[] {
  const kindsOf = new Map<string, Map<string, string[]>>();
  for (const [kind, fields] of Object.entries(shapes))
    for (const [field, form] of Object.entries(fields)) {
      const told = `${formWords(form)} | ${meaningOf(kind, field) ?? ''}`;
      const variants = kindsOf.get(field) ?? new Map<string, string[]>();
      variants.set(told, [...(variants.get(told) ?? []), kind]);
      kindsOf.set(field, variants);
    }
  const rows = [...kindsOf].flatMap(([field, variants]) =>
    [...variants].map(([told, kinds]) => {
      const where = variants.size > 1 ? ` of ${kinds.map((kind) => `\`${kind}\``).join(', ')}` : '';
      return `| \`${field}\`${where} | ${told} |`;
    }),
  );
  return ['| field | holds | meaning |', '| --- | --- | --- |', ...rows.toSorted()];
}

function formWords(form: Form): string {
  switch (form.is) {
    case 'text':
      return 'text';
    case 'flag':
      return 'true or false';
    case 'number':
      return 'number';
    case 'positive':
      return 'number above 0';
    case 'count':
      return 'whole number from 1';
    case 'score':
      return 'number from 0 to 1';
    case 'wait':
      return 'milliseconds, at most 366 days';
    case 'unit':
      return 'a unit, such as `N·m`';
    case 'torque-unit':
      return 'a unit of torque';
    case 'day':
      return 'a day, YYYY-MM-DD';
    case 'one-of':
      return form.values.map((value) => `\`${value}\``).join(', ');
    case 'or-null':
      return `${formWords(form.of)}, or null`;
    case 'maybe':
      return `${formWords(form.of)}; left out in version 1`;
    case 'list':
      return `list of ${formWords(form.of)}`;
    case 'wrench':
      return 'a wrench';
    case 'question':
      return 'a question, with its own `kind`';
    default:
      return assertNever(form);
  }
}

if (isRunDirectly(import.meta.url)) await writeFile(PAGE, logPageFrom(await readFile(PAGE, 'utf8')));
