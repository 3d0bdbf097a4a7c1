import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { lockedPackages } from './lockfile';

const manifest: {
  readonly dependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
  readonly engines: { readonly node: string };
} = JSON.parse(readFileSync('package.json', 'utf8'));

describe('what is installed', () => {
  test.each(Object.entries({ ...manifest.dependencies, ...manifest.devDependencies }))(
    '%s %s is one exact version, and the locked one',
    (name, version) => {
      expect(version).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
      expect(lockedPackages().find((p) => p.name === name)?.version).toBe(version);
    },
  );

  test('every locked package has its checksum', () => {
    expect(lockedPackages().filter(({ integrity }) => !integrity?.startsWith('sha512-'))).toEqual([]);
  });

  test('the lock file names no host: it installs from whatever registry is set up', () => {
    expect(lockedPackages().filter(({ resolved }) => resolved !== undefined)).toEqual([]);
    expect(readFileSync('package-lock.json', 'utf8')).not.toMatch(
      /https?:\/\/(?!(www\.)?(github|opencollective|[\w.-]*\/?funding))[\w.-]*registry/,
    );
  });

  test('no package is installed in two versions in what we ship', () => {
    const names = lockedPackages()
      .filter(({ dev }) => !dev)
      .map(({ name }) => name);
    expect(names.filter((name, at) => names.indexOf(name) !== at)).toEqual([]);
  });
});

test('what we ship has no known hole', () => {
  const { stdout, stderr } = spawnSync('npm', ['audit', '--omit=dev', '--json'], { encoding: 'utf8', timeout: 60_000 });
  const report: { readonly vulnerabilities?: object; readonly message?: string } = JSON.parse(stdout || '{}');
  if (report.vulnerabilities === undefined) {
    console.log(`AUDIT NOT RUN: ${report.message ?? stderr.split('\n')[0] ?? 'npm gave no answer'}`);
    return;
  }
  expect(report.vulnerabilities).toEqual({});
}, 90_000);
