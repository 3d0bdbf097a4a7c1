import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: import.meta.dirname,
  base: './',
  build: { outDir: '../dist', emptyOutDir: true, assetsInlineLimit: 0, target: 'es2022' },
  server: { fs: { allow: ['..'] } },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  test: { root: `${import.meta.dirname}/..`, include: ['tests/**/*.test.{ts,tsx}'], environment: 'node' },
});
