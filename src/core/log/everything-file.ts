import { fail, ok, type Result } from '../result';
import type { JobFileIssue } from './job-file';
import { glimpse, isObject } from './job-file-shape';

/**
 * The file of everything: one JSON object that carries what a person has on one machine to another.
 *
 *     { "format": "wrenchside-everything", "version": 1, "made": <UTC milliseconds>,
 *       "procedures": [ { "file", "text" }, … ],
 *       "settings":   { … },
 *       "voices":     [ <a voice profile>, … ],
 *       "jobs":       [ <a whole job file, as job-file.ts has it>, … ] }
 *
 * Here only its frame is read. Whoever takes it in judges each part by itself, as if it had come alone: a damaged one
 * keeps none of the others out. What belongs to the machine and not to the person is not in it: see portable-settings.ts.
 */
export type EverythingFile = {
  readonly jobs: readonly unknown[];
  readonly procedures: readonly unknown[];
  readonly settings: Readonly<Record<string, unknown>>;
  readonly voices: readonly unknown[];
};

/** The same to be written: jobs are the texts of job files, which are never put together in one text. */
export type EverythingParts = {
  readonly jobs: readonly string[];
  readonly procedures: readonly { readonly file: string; readonly text: string }[];
  readonly settings: object;
  readonly voices: readonly unknown[];
};

const FORMAT = 'wrenchside-everything';
const VERSION = 1;

/** The file in pieces, to be written one after the other. `made` is UTC wall time in ms. */
export function printEverything(
  made: number,
  { jobs, procedures, settings, voices }: EverythingParts,
): readonly string[] {
  const frame = JSON.stringify({ format: FORMAT, version: VERSION, made, procedures, settings, voices }, null, 1);
  const listed = jobs.flatMap((job, index) => [index === 0 ? '' : ',\n', job]);
  return [frame.slice(0, frame.lastIndexOf('\n')), ',\n "jobs": [\n', ...listed, '\n ]\n}'];
}

export const isEverything = (root: unknown): boolean => isObject(root) && root.format === FORMAT;

/** The frame of a parsed file, or the first thing that is wrong with it, by its JSON Pointer. */
export function readEverything(root: unknown): Result<EverythingFile, JobFileIssue> {
  if (!isObject(root) || root.format !== FORMAT) {
    return fail({ code: 'not-a-job-file', at: '/format', given: glimpse(isObject(root) ? root.format : root) });
  }
  const { version, jobs, procedures, settings, voices } = root;
  if (typeof version === 'number' && version > VERSION) {
    return fail({ code: 'newer-file', at: '/version', given: `${version}`, known: VERSION });
  }
  const wrong = (key: string): Result<never, JobFileIssue> =>
    fail({ code: root[key] === undefined ? 'missing' : 'wrong-type', at: `/${key}`, given: glimpse(root[key]) });
  if (version !== VERSION) return wrong('version');
  if (!Array.isArray(jobs)) return wrong('jobs');
  if (!Array.isArray(procedures)) return wrong('procedures');
  if (!isObject(settings)) return wrong('settings');
  if (!Array.isArray(voices)) return wrong('voices');
  return ok({ jobs, procedures, settings, voices });
}
