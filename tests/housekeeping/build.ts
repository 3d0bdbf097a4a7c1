import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import { gzipSync } from 'node:zlib';
import { dist } from '../browser/site';

/** Every file of the build under test, by its path in it. */
export const builtFiles = (): readonly string[] =>
  readdirSync(dist, { recursive: true, encoding: 'utf8' })
    .filter((name) => statSync(join(dist, name)).isFile())
    .map((name) => name.split(sep).join('/'))
    .sort();

export const bytesOf = (path: string): number => statSync(join(dist, path)).size;
export const packedBytesOf = (path: string): number => gzipSync(readFileSync(join(dist, path)), { level: 9 }).length;
export const textOf = (path: string): string => readFileSync(join(dist, path), 'utf8');
