import { z } from 'zod';
import { FAULTS } from '../../core/procedure/procedure';
import { editorSchema } from '../editor-schema/editor-schema';
import { MEANINGS } from './guide-meanings';

/** As much of JSON Schema as the document's own schema uses. */
type Schema = {
  readonly $ref?: string | undefined;
  readonly type?: string | undefined;
  readonly description?: string | undefined;
  readonly const?: unknown;
  readonly enum?: readonly unknown[] | undefined;
  readonly properties?: Readonly<Record<string, Schema>> | undefined;
  readonly required?: readonly string[] | undefined;
  readonly additionalProperties?: Schema | boolean | undefined;
  readonly items?: Schema | boolean | undefined;
  readonly anyOf?: readonly Schema[] | undefined;
  readonly oneOf?: readonly Schema[] | undefined;
  readonly prefixItems?: readonly Schema[] | undefined;
};

const schemaShape: z.ZodType<Schema> = z.lazy(() =>
  z.looseObject({
    $ref: z.string().optional(),
    type: z.string().optional(),
    description: z.string().optional(),
    enum: z.array(z.unknown()).optional(),
    properties: z.record(z.string(), schemaShape).optional(),
    required: z.array(z.string()).optional(),
    additionalProperties: z.union([z.boolean(), schemaShape]).optional(),
    items: z.union([z.boolean(), schemaShape]).optional(),
    anyOf: z.array(schemaShape).optional(),
    oneOf: z.array(schemaShape).optional(),
    prefixItems: z.array(schemaShape).optional(),
  }),
);

const root = schemaShape.parse(JSON.parse(editorSchema()));
const defs = z.looseObject({ $defs: z.record(z.string(), schemaShape) }).parse(JSON.parse(editorSchema())).$defs;

/** A schema behind its reference; a description beside the reference comes first. */
function resolved(schema: Schema): Schema {
  const name = schema.$ref?.replace('#/$defs/', '');
  const target = name === undefined ? undefined : defs[name];
  if (target === undefined) return schema;
  const { $ref: _, ...own } = schema;
  return { ...resolved(target), ...own };
}

const within = (schema: Schema | boolean | undefined): Schema => (typeof schema === 'object' ? schema : {});

const at = (schema: Schema, ...path: readonly string[]): Schema =>
  path.reduce((inner, key) => {
    const { properties, items, additionalProperties } = resolved(inner);
    if (key === '[]') return within(items);
    if (key === '*') return within(additionalProperties);
    return properties?.[key] ?? {};
  }, schema);

const entry = (heading: string): Schema => at(root, heading, '*');
const alternatives = (schema: Schema): readonly Schema[] => resolved(schema).oneOf ?? resolved(schema).anyOf ?? [];

const [stepUnion, block] = alternatives(at(root, 'phases', '[]', 'steps', '[]'));
const steps = alternatives(stepUnion ?? {}).map(resolved);
const stepOf = (kind: string): Schema => steps.find((step) => kindsOf(step).includes(kind)) ?? {};
const kindsOf = ({ properties }: Schema): readonly unknown[] => [properties?.['kind']?.const ?? 'do'];
const [plain, tighten] = [stepOf('do'), stepOf('tighten')];

/** The fields of a step of one kind that plain steps do not have. */
const beyond = (step: Schema): Schema => {
  const properties = Object.entries(step.properties ?? {}).filter(([name]) => !(name in (plain.properties ?? {})));
  return { ...step, properties: Object.fromEntries(properties) };
};

const stepWithKinds: Schema = {
  ...plain,
  properties: { ...plain.properties, kind: { enum: steps.flatMap(kindsOf) } },
};

const ruleOf = (kind: string): Schema =>
  alternatives(entry('rules')).find((one) => resolved(one).properties?.['kind']?.const === kind) ?? {};

/** The tables of the guide: every object a document can hold, under the name by which the guide calls it. */
export const TABLES: ReadonlyMap<string, Schema> = new Map([
  ['document', root],
  ['phase', at(root, 'phases', '[]')],
  ['step', stepWithKinds],
  ['tighten and slacken', beyond(tighten)],
  ['measure', beyond(stepOf('measure'))],
  ['wait', beyond(stepOf('wait'))],
  ['fill', beyond(stepOf('fill'))],
  ['block', resolved(block ?? {})],
  ['pass', at(tighten, 'passes', '[]')],
  ['recovery', { properties: Object.fromEntries(FAULTS.map((fault) => [fault, at(tighten, 'recovery', '*')])) }],
  ['a rule', at(tighten, 'recovery', '*')],
  ['read-back', at(plain, 'read-back')],
  ['finding', at(plain, 'finding')],
  ['only-if', at(plain, 'only-if')],
  ['stow', at(plain, 'stow', '[]')],
  ['tools', entry('tools')],
  ['parts', entry('parts')],
  ['patterns', entry('patterns')],
  ['landmarks', at(entry('patterns'), 'landmarks', '[]')],
  ['fasteners', at(entry('patterns'), 'fasteners', '[]')],
  ['circle', at(entry('patterns'), 'circle')],
  ['grid', at(entry('patterns'), 'grid')],
  ['lines', at(entry('patterns'), 'grid', 'columns')],
  ['details', at(entry('patterns'), 'details', '[]')],
  ['loose-ends', entry('loose-ends')],
  ['timers', entry('timers')],
  ['limits', entry('limits')],
  ...alternatives(entry('rules')).map((one): [string, Schema] => [
    `rules: ${resolved(one).properties?.['kind']?.const}`,
    one,
  ]),
  ['grades', at(ruleOf('gasket-grade'), 'grades', '[]')],
]);

export type FieldRow = {
  readonly table: string;
  readonly field: string;
  readonly needed: boolean;
  readonly form: string;
  /** From the schema, and what our own list adds to it. */
  readonly meanings: readonly string[];
};

export const fieldRows = (): readonly FieldRow[] =>
  [...TABLES].flatMap(([table, schema]) => {
    const { properties = {}, required = [] } = resolved(schema);
    return Object.entries(properties).map(([field, value]) => ({
      table,
      field,
      needed: required.includes(field),
      form: formOf(value),
      meanings: [specific(value), MEANINGS[`${table} ${field}`]].flatMap((meaning) => meaning ?? []),
    }));
  });

/** Descriptions of ids, texts and figures say what form they have, not what they mean in their place. */
const FORMS: ReadonlyMap<string, string> = new Map([
  ['id', 'id'],
  ['text', 'sentences'],
  ['name', 'words'],
  ['language', 'code'],
  ['quantity', 'figure with unit'],
  ['point', '[mm, mm]'],
  ['order', 'order'],
  ['subset', 'group or numbers'],
  ['for', 'list or lists'],
  ['recovery', 'rules by fault'],
  ['pass', 'pass'],
]);
const MEANING_REFS: ReadonlySet<string> = new Set(['for', 'recovery', 'finding']);

const refOf = ({ $ref }: Schema): string => $ref?.replace('#/$defs/', '') ?? '';

const specific = (schema: Schema): string | undefined =>
  schema.description ?? (MEANING_REFS.has(refOf(schema)) ? resolved(schema).description : undefined);

function formOf(schema: Schema): string {
  const named = FORMS.get(refOf(schema));
  if (named !== undefined) return named;
  if (alternatives(schema).length > 0) return 'step';
  const { type, enum: values, const: only, items, prefixItems, additionalProperties, properties } = resolved(schema);
  if (values) return values.map((value) => `\`${value}\``).join(' ');
  if (only !== undefined) return `\`${only}\``;
  switch (type) {
    case 'array':
      return prefixItems ? `[${prefixItems.map(formOf).join(', ')}]` : `list of: ${formOf(within(items))}`;
    case 'object':
      return properties ? 'group' : `by id: ${formOf(within(additionalProperties))}`;
    case 'integer':
      return 'whole number';
    case 'number':
      return 'number';
    case 'boolean':
      return '`true` `false`';
    default:
      return 'words';
  }
}
