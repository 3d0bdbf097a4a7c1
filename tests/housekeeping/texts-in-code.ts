import { parseSync } from 'vite';

/** A text in a piece of code: what stands in quotes or between tags, with `{}` for each value put into it. */
export type CodeText = {
  readonly text: string;
  readonly line: number;
  /** The property or the attribute it is the value of, where it is one's. */
  readonly under: string;
  /** Between tags, or in an attribute that is read aloud or shown: a person meets it as it stands. */
  readonly isShown: boolean;
};

type Node = Readonly<Record<string, unknown>> & { readonly type: string; readonly start: number };

/** Attributes of elements that a person meets. What others hold is for the browser. */
const MET = /^(title|alt|label|placeholder|summary|aria-(label|description|roledescription|valuetext|placeholder))$/;

/** What is said by an error that is thrown is a fault of the program, and told to nobody at work. Types say nothing. */
const SILENT = /^(Import|ExportAll|ThrowStatement|TS(?!As|Satisfies|NonNull|Parameter|Enum))/;

const isNode = (value: unknown): value is Node =>
  typeof value === 'object' && value !== null && 'type' in value && typeof value.type === 'string';

/** Every text of a file of code, as its syntax tree has it. */
export function textsIn(file: string, code: string): readonly CodeText[] {
  const { program, errors } = parseSync(file, code);
  if (errors.length > 0) throw new Error(`${file} cannot be read: ${errors[0]?.message}`);
  const found: CodeText[] = [];
  const look = (value: unknown, under: string, isMet: boolean): void => {
    if (Array.isArray(value)) for (const one of value) look(one, under, isMet);
    if (!isNode(value) || SILENT.test(value.type) || isError(value)) return;
    const text = textOf(value);
    const isShown = value.type === 'JSXText' || isMet;
    if (text !== null) found.push({ text, line: code.slice(0, value.start).split('\n').length, under, isShown });
    for (const [key, inside] of Object.entries(value)) {
      const place = `${value.type} ${key}`;
      if (!NOT_TEXT.has(place)) look(inside, nameOf(value) ?? under, meets(value, place, isMet));
    }
  };
  look(program, '', false);
  return found;
}

/** Whether what stands here is met by a person as it stands: a child between tags, or the value of such an attribute. */
function meets(node: Node, place: string, isMet: boolean): boolean {
  if (place === 'JSXElement children' || place === 'JSXFragment children') return true;
  if (place === 'JSXAttribute value') return MET.test(nameOf(node) ?? '');
  return isMet && PASSED_ON.has(place);
}

const PASSED_ON: ReadonlySet<string> = new Set([
  'JSXExpressionContainer expression',
  'ConditionalExpression consequent',
  'ConditionalExpression alternate',
  'LogicalExpression left',
  'LogicalExpression right',
]);

/** Keys of properties and names are no texts, whatever is written in them. */
const NOT_TEXT: ReadonlySet<string> = new Set([
  'Property key',
  'ExportNamedDeclaration source',
  'ImportExpression source',
]);

/** `new Error(…)`, thrown here or elsewhere. */
const isError = ({ type, callee }: Node): boolean =>
  type === 'NewExpression' && isNode(callee) && typeof callee['name'] === 'string' && callee['name'].endsWith('Error');

function textOf(node: Node): string | null {
  const { type, value, quasis } = node;
  if ((type === 'Literal' || type === 'JSXText') && typeof value === 'string') return value;
  if (type !== 'TemplateLiteral' || !Array.isArray(quasis)) return null;
  return quasis.map((quasi: { readonly value: { readonly cooked: string } }) => quasi.value.cooked).join('{}');
}

/** The name of what has a value here. */
function nameOf(node: Node): string | undefined {
  const name = node.type === 'Property' ? node['key'] : node.type === 'JSXAttribute' ? node['name'] : null;
  if (!isNode(name)) return undefined;
  const said = name['name'] ?? name['value'];
  return typeof said === 'string' ? said : '';
}

/** Whether a piece of code reads the `detail` of something: of a fault, since events of the browser are told apart by name. */
export function readsDetail(file: string, code: string): boolean {
  let reads = false;
  const look = (value: unknown): void => {
    if (Array.isArray(value)) for (const one of value) look(one);
    if (!isNode(value)) return;
    const { type, property, object, properties } = value;
    if (type === 'MemberExpression' && named(property, 'detail') && !named(object, 'event')) reads = true;
    if (type === 'ObjectPattern' && Array.isArray(properties))
      reads ||= properties.some((one: unknown) => isNode(one) && named(one['key'], 'detail'));
    for (const inside of Object.values(value)) look(inside);
  };
  look(parseSync(file, code).program);
  return reads;
}

const named = (value: unknown, name: string): boolean => isNode(value) && value['name'] === name;
