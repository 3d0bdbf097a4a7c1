import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files of more than ten seconds or so, longest first, as `.ci/run` prints them. */
const LONG = [
  'browser/layout',
  'browser/by-hand',
  'browser/mini-session',
  'real-speech/floors',
  'browser/faults.test',
  'browser/vosk',
  'browser/kill',
  'browser/self-hearing',
  'browser/faults-midway',
  'browser/notes',
  'browser/access',
  'browser/record.test',
  'browser/read-aloud',
  'browser/heard-clips',
  'browser/offline',
  'cli/hear-bank',
  'speech/french',
  'speech/ear.test',
  'browser/network',
  'browser/tour',
  'machine/walk',
  'grammars/one-meaning',
  'speech/adapting/fitted',
  'cli/docs',
  'cli/procedure-new',
  'machine/long-runs',
  'cli/authoring/places',
  'browser/french',
  'browser/paper',
];

const place = ({ moduleId }: TestSpecification): number => {
  const at = LONG.findIndex((name) => moduleId.includes(`/tests/${name}`));
  return at < 0 ? LONG.length : at;
};

/** Begins with what takes longest, so that no long file runs alone at the end; files that share a worker come together. */
export class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const shares = ({ project }: TestSpecification): number => (project.config.isolate ? 0 : 1);
    return files.toSorted(
      (a, b) => place(a) - place(b) || shares(a) - shares(b) || a.moduleId.localeCompare(b.moduleId),
    );
  }
}
