import type { Plugin } from 'vite';
import { acknowledgements, thirdPartyFile } from './acknowledgements.ts';
import { THIRD_PARTIES } from './table.ts';

const MODULE = 'virtual:acknowledgements';
const RESOLVED = `\0${MODULE}`;

/** Gives the program the words its licences ask for, and ends a build with a package in it that nobody has looked at. */
export function licences(): Plugin {
  const known = new Set(THIRD_PARTIES.flatMap(({ packages }) => packages));
  return {
    name: 'wrenchside-licences',
    resolveId: (id) => (id === MODULE ? RESOLVED : null),
    load: (id) => (id === RESOLVED ? `export default ${JSON.stringify(acknowledgements())};` : null),
    generateBundle(_, bundle) {
      for (const output of Object.values(bundle)) {
        if (output.type !== 'chunk') continue;
        const unknown = output.moduleIds.map(packageOf).filter((name) => name !== null && !known.has(name));
        if (unknown.length > 0)
          this.error(`${output.fileName} holds ${unknown[0]}, which is not in src/cli/licences/table.ts`);
      }
      this.emitFile({ type: 'asset', fileName: 'third-party.txt', source: thirdPartyFile() });
    },
  };
}

/** The package a module belongs to: the last one in its path, since packages can lie inside packages. */
export function packageOf(module: string): string | null {
  const [, inside] = /^.*\/node_modules\/(.+)$/.exec(module.replaceAll('\\', '/')) ?? [];
  if (inside === undefined) return null;
  const [first = '', second = ''] = inside.split('/');
  return first.startsWith('@') ? `${first}/${second}` : first;
}
