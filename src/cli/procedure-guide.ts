import { readFile, writeFile } from 'node:fs/promises';
import { tellIssue } from '../core/procedure/finding-words';
import { ISSUE_CODES } from '../core/procedure/issue';
import { checkDocument } from './check-document';
import { between } from './generated';
import { type FieldRow, fieldRows, TABLES } from './procedure/guide-fields';
import { MISTAKES, type Mistake, withMistake } from './procedure/guide-mistakes';
import { isRunDirectly } from './procedure/run-directly';
import { languages, readFindingsFile } from './tongue-files';

const GUIDE = new URL('../../procedures/README.md', import.meta.url);

/** The guide is written in the first of our languages, and its example too. */
const WORDS = readFindingsFile(languages()[0] ?? '');

/** The document that the guide shows whole: what its tables of mistakes are made from. */
export function exampleIn(guide: string): string {
  const example = /```yaml whole example\n([\s\S]*?)```/.exec(guide)?.[1];
  if (example === undefined) throw new Error('the guide has no "yaml whole example"');
  return example;
}

/** The guide with its generated parts written anew; what stands between them is left as it is. */
export function guideFrom(guide: string): string {
  const parts = { fields: fieldTables(), mistakes: mistakeTable(exampleIn(guide)) };
  return Object.entries(parts).reduce((text, [name, lines]) => between(text, name, lines), guide);
}

/** Under which heading of the guide each table stands, in words. */
const HEADINGS: ReadonlyMap<string, string> = new Map([
  ['document', 'The document'],
  ['phase', 'A phase'],
  ['step', 'A step of any kind'],
  ['tighten and slacken', 'A step that tightens or slackens'],
  ['measure', 'A step that measures'],
  ['wait', 'A step that waits'],
  ['fill', 'A step that fills'],
  ['block', 'Steps repeated together'],
  ['pass', 'A pass'],
  ['recovery', '`recovery`: what to do when a fastener goes wrong'],
  ['a rule', 'One rule of recovery'],
  ['lines', '`columns` and `rows` of a grid'],
]);

function fieldTables(): readonly string[] {
  const rows = fieldRows();
  const tables = [...TABLES.keys()].map((table) =>
    [
      `**${HEADINGS.get(table) ?? `\`${table}\``}**`,
      '',
      '| field | | form | meaning |',
      '| --- | --- | --- | --- |',
      ...rows.filter((row) => row.table === table).map(fieldLine),
    ].join('\n'),
  );
  return [tables.join('\n\n')];
}

const fieldLine = ({ field, needed, form, meanings }: FieldRow): string =>
  `| \`${field}\` | ${needed ? 'needed' : ''} | ${form} | ${cell(meanings.join(' '))} |`;

function mistakeTable(example: string): readonly string[] {
  const byCode = new Map(MISTAKES.map((mistake) => [mistake.code, mistake]));
  return [
    '| code | what was written | what the check says |',
    '| --- | --- | --- |',
    ...ISSUE_CODES.flatMap((code) => {
      const mistake = byCode.get(code);
      return mistake === undefined ? [] : [mistakeLine(mistake, example)];
    }),
  ];
}

function mistakeLine(mistake: Mistake, example: string): string {
  const text = withMistake(example, mistake);
  if (text === undefined) throw new Error(`the guide's example has no single "${mistake.piece}"`);
  const checked = checkDocument(text, 'example.yaml');
  const issues = [...(checked.ok ? [] : checked.error), ...checked.warnings];
  const issue = issues.find(({ code }) => code === mistake.code);
  if (issue === undefined) throw new Error(`${mistake.code} is not what the check says of its example`);
  const { message, mend } = tellIssue(WORDS, issue);
  const warning = issue.severity === 'warning' ? ' (warning)' : '';
  return `| \`${mistake.code}\`${warning} | ${writtenAs(mistake)} | ${cell(`${message} ${mend}`)} |`;
}

/** The lines that differ, in one line: what was left out is told as such. */
function writtenAs({ words, instead, piece }: Mistake): string {
  if (words !== undefined) return cell(words);
  const old = new Set(piece.split('\n').map((line) => line.trim()));
  const lines = instead.split('\n').map((line) => line.trim());
  const fresh = lines.filter((line) => line !== '' && !old.has(line));
  return fresh.length === 0 ? `without ${code(piece.trim())}` : fresh.map(code).join(' ');
}

const code = (text: string): string => `\`${cell(text.replaceAll('\n', ' ').replace(/ {2,}/g, ' '))}\``;
const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('<', '&lt;');

if (isRunDirectly(import.meta.url)) await writeFile(GUIDE, guideFrom(await readFile(GUIDE, 'utf8')));
