import { readFileSync } from 'node:fs';

export type LockedPackage = {
  readonly name: string;
  readonly version: string;
  readonly dev: boolean;
  readonly licence: string | undefined;
  readonly integrity: string | undefined;
  readonly resolved: string | undefined;
};

type LockEntry = {
  readonly version?: string;
  readonly dev?: boolean;
  readonly license?: string;
  readonly integrity?: string;
  readonly resolved?: string;
};

type Lock = { readonly packages: Readonly<Record<string, LockEntry>> };

/** Every package that the lock file pins, with what it says of it. */
export function lockedPackages(): readonly LockedPackage[] {
  const lock: Lock = JSON.parse(readFileSync('package-lock.json', 'utf8'));
  return Object.entries(lock.packages).flatMap(([path, entry]) => {
    const name = path.split('node_modules/').at(-1) ?? '';
    if (path === '') return [];
    const { version = '', dev = false, license: licence, integrity, resolved } = entry;
    return [{ name, version, dev, licence, integrity, resolved }];
  });
}
