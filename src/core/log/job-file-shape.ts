import { fail, ok, type Result } from '../result';
import type { FileBlob, JobFile, JobFileIssue } from './job-file';

type Members = Readonly<Record<string, unknown>>;
type ShapeCode = 'missing' | 'wrong-type' | 'not-base64' | 'duplicate';

const LONGEST_NAME = 500;

/** From the parsed root of a job file to its fields, or every issue of shape there is. The log's own texts are not read here. */
export function jobFileShape(root: Members): Result<JobFile, readonly JobFileIssue[]> {
  const issues: JobFileIssue[] = [];
  const report = (code: ShapeCode, at: string, value: unknown) => {
    issues.push({ code, at, given: glimpse(value) });
  };

  /** A member that fits, or `instead` after an issue has been noted. */
  function member<T>(of: Members, key: string, at: string, fits: (value: unknown) => value is T, instead: T): T {
    const value = Object.hasOwn(of, key) ? of[key] : undefined;
    if (fits(value)) return value;
    report(value === undefined ? 'missing' : 'wrong-type', `${at}/${key}`, value);
    return instead;
  }

  function blob(value: unknown, at: string): FileBlob {
    const of = isObject(value) ? value : {};
    const base64 = member(of, 'base64', at, isText, '');
    if (!isBase64(base64)) report('not-base64', `${at}/base64`, base64);
    return { id: member(of, 'id', at, isName, ''), mime: member(of, 'mime', at, isMedia, ''), base64 };
  }

  const job = member(root, 'job', '', isObject, {});
  const head = member(root, 'head', '', isObject, {});
  const card = {
    id: member(job, 'id', '/job', isName, ''),
    title: member(job, 'title', '/job', isName, ''),
    procedure: member(job, 'procedure', '/job', isName, ''),
    created: member(job, 'created', '/job', isTime, 0),
    who: member(job, 'who', '/job', isName, ''),
    closed: member(job, 'closed', '/job', isFlag, false),
  };
  const end = { seq: member(head, 'seq', '/head', isCount, 0), hash: member(head, 'hash', '/head', isName, '') };
  const texts = member(root, 'entries', '', isList, []).map((value, index) => {
    if (isText(value)) return value;
    report('wrong-type', `/entries/${index}`, value);
    return '';
  });
  const listed = Object.hasOwn(root, 'blobs') ? member(root, 'blobs', '', isList, []) : [];
  const blobs = listed.map((value, index) => blob(value, `/blobs/${index}`));
  const seen = new Set<string>();
  for (const [index, { id }] of blobs.entries()) {
    if (seen.has(id) && id !== '') report('duplicate', `/blobs/${index}/id`, id);
    seen.add(id);
  }
  return issues.length > 0 ? fail(issues) : ok({ card, head: end, texts, blobs });
}

/** A short piece of what stood there, enough to find it again. */
export function glimpse(value: unknown): string {
  if (value === undefined) return '';
  if (isObject(value)) return '{…}';
  if (Array.isArray(value)) return '[…]';
  return String(value).slice(0, 80);
}

export const isObject = (value: unknown): value is Members =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
const isList = (value: unknown): value is readonly unknown[] => Array.isArray(value);
const isText = (value: unknown): value is string => typeof value === 'string';
const isName = (value: unknown): value is string => isText(value) && value !== '' && value.length <= LONGEST_NAME;
const isFlag = (value: unknown): value is boolean => typeof value === 'boolean';
const isTime = (value: unknown): value is number => Number.isFinite(value);
const isCount = (value: unknown): value is number => Number.isSafeInteger(value) && Number(value) >= 0;
/** Sound and pictures only: nothing that a browser would run when it is opened. */
const isMedia = (value: unknown): value is string =>
  isName(value) && /^(audio|image)\/[a-z0-9.+-]+(;[ -~]*)?$/.test(value) && !value.includes('svg');
/** RFC 4648 section 4, padded. */
const isBase64 = (text: string) => text.length % 4 === 0 && /^[A-Za-z0-9+/]*={0,2}$/.test(text);
