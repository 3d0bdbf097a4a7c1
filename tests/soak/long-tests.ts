import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { SEED } from '../long';
import { circumstances } from './circumstances';

// npm run soak:tests. The tests of every build, at full length: 20,000 mutants of each kind of file, 100,000 strings of
// random words, a hundred jobs of a thousand turns on every procedure, 200 kills of the browser.

const FILES = [
  'tests/core/procedure/never-throws.test.ts',
  'tests/core/language/jsgf/parse-jsgf.test.ts',
  'tests/core/log/job-file.test.ts',
  'tests/core/log/chain.test.ts',
  'tests/vosk/archive-check.test.ts',
  'tests/core/job/random-words.test.ts',
  'tests/machine/long-runs.test.ts',
  'tests/browser/kill.test.ts',
];

type Report = {
  readonly testResults: readonly {
    readonly name: string;
    readonly startTime: number;
    readonly endTime: number;
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[];
  }[];
};

const only = process.argv.slice(2);
const files = FILES.filter((file) => only.length === 0 || only.some((name) => file.includes(name)));
mkdirSync('test-output', { recursive: true });
const raw = 'test-output/long-tests-raw.json';
const { status } = spawnSync(
  'npx',
  ['vitest', 'run', '--config', 'src/vite.config.ts', ...files, '--testTimeout=7200000', '--reporter=default'].concat(
    '--reporter=json',
    `--outputFile.json=${raw}`,
  ),
  { stdio: 'inherit', env: { KILL_RUNS: '200', ...process.env, WRENCHSIDE_LONG: '1' } },
);
const { testResults } = JSON.parse(readFileSync(raw, 'utf8')) as Report;
const results = testResults.map(({ name, startTime, endTime, assertionResults }) => ({
  file: name.slice(name.indexOf('tests/')),
  seconds: Math.round((endTime - startTime) / 1000),
  tests: assertionResults.map(({ fullName, status: came }) => ({ name: fullName, came })),
}));
writeFileSync('test-output/long-tests.json', `${JSON.stringify({ ...circumstances(SEED), results }, null, 2)}\n`);
for (const { file, seconds, tests } of results)
  console.log(
    `${file}  ${seconds} s  ${tests.filter(({ came }) => came === 'passed').length} of ${tests.length} passed`,
  );
process.exitCode = status ?? 1;
