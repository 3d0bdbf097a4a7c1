import { describe, expect, test } from 'vitest';
import { partOf } from '../../src/offline/file-list';
import { builtFiles, bytesOf, packedBytesOf, textOf } from './build';

const KB = 1024;
const MB = 1000 * 1000;

/**
 * What index.html loads before anything can be seen: its script, whatever that imports at once, its styles, and the texts
 * of one language, the longest.
 */
function shell(): readonly string[] {
  const found = new Set<string>();
  const take = (path: string): void => {
    if (found.has(path)) return;
    found.add(path);
    if (!path.endsWith('.js')) return;
    for (const [, name] of textOf(path).matchAll(
      /(?:^|[;}])\s*import\s*(?:[\w{}$,\s*]+from\s*)?["'`]\.\/([\w.-]+)["'`]/g,
    ))
      if (name) take(`assets/${name}`);
  };
  for (const [, path] of textOf('index.html').matchAll(/(?:src|href)="\.\/(assets\/[^"]+)"/g)) if (path) take(path);
  const texts = builtFiles().filter(
    (file) => /^assets\/language-\w+-[\w-]+\.js$/.test(file) && !file.includes('-later'),
  );
  const [longest] = texts.toSorted((a, b) => packedBytesOf(b) - packedBytesOf(a));
  if (longest === undefined) throw new Error('no texts of a language in the build');
  take(longest);
  return [...found];
}

const of = (part: string): readonly string[] => builtFiles().filter((file) => partOf(file) === part);
const sum = (files: readonly string[], size: (file: string) => number): number =>
  files.reduce((total, file) => total + size(file), 0);

describe('what a person waits for', () => {
  test('the shell, packed, is at most 120 KB', () => {
    const scripts = shell().filter((file) => file.endsWith('.js'));
    expect(scripts.length).toBeGreaterThan(0);
    const packed = sum(scripts, packedBytesOf);
    console.log(
      `shell: ${(packed / KB).toFixed(1)} KB of script packed, ${(sum(shell(), packedBytesOf) / KB).toFixed(1)} KB with styles`,
    );
    expect(packed).toBeLessThanOrEqual(120 * KB);
  });

  test.each([
    ['ear', 1],
    ['model-en-us', 11],
    ['model-fr-fr', 8],
    ['voice', 21.6],
    ['choice', 5.9],
  ])('the %s is at most %d MB', (part, most) => {
    const bytes = sum(of(part), bytesOf);
    console.log(`${part}: ${(bytes / MB).toFixed(2)} MB`);
    expect(bytes).toBeGreaterThan(0.2 * MB);
    expect(bytes).toBeLessThanOrEqual(most * MB);
  });

  test.each(['model', 'flite', 'vosk', 'check-procedure'])('%s is not part of the first paint', (name) => {
    expect(shell().filter((file) => file.includes(name))).toEqual([]);
  });
});

test('the service worker can be started by every browser: it imports nothing', () => {
  expect(textOf('service-worker.js')).not.toMatch(/(^|[;}\s])(import|export)[\s{"'`]/);
});
