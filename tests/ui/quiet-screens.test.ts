import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';

const UI = join(import.meta.dirname, '../../src/ui');
const files = readdirSync(UI, { recursive: true, encoding: 'utf8' }).filter((file) => /\.tsx?$/.test(file));
const page = readFileSync(join(UI, '../index.html'), 'utf8');

describe('the screens take props and give events, and do nothing else', () => {
  test.each([
    ['reads a clock', /Date\.now|new Date\(\)|performance\.now/],
    ['waits', /setTimeout|setInterval|requestAnimationFrame/],
    ['loads or sends', /\bfetch\(|XMLHttpRequest|sendBeacon|WebSocket/],
    ['stores', /localStorage|sessionStorage|indexedDB|\bcaches\b/],
    ['guesses', /Math\.random|randomUUID/],
    // Not held by the content security policy, which lets script set styles: a habit kept out all the same.
    ['styles by attribute', /\sstyle=|dangerouslySetInnerHTML|innerHTML/],
  ])('no file %s', (_what, pattern) => {
    expect(files.filter((file) => pattern.test(readFileSync(join(UI, file), 'utf8')))).toEqual([]);
  });
});

describe('the page', () => {
  test('allows only its own address, and no script or style in the text', () => {
    const policy = page.match(/content="(default-src[^"]*)"/)?.[1];
    expect(policy).toBe(
      "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self' blob:; media-src 'self' blob:; img-src 'self' blob:; worker-src 'self'; frame-src 'self'",
    );
    expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
    expect([...page.matchAll(/<script[^>]*>([^<]*)<\/script>/g)].map((m) => m[1])).toEqual(['']);
  });

  test('names nothing outside itself', () => {
    expect(page).not.toMatch(/https?:|\/\/[a-z]/);
  });
});
