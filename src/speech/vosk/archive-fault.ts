/** Why an archive is not a model this app can use. The words for each are in the screen texts, by code. */
export type ArchiveFault =
  | { readonly code: 'archive-empty' }
  /** `of` says which is over the bound: the archive itself, or what it unpacks to. Bytes. */
  | { readonly code: 'archive-too-large'; readonly of: 'archive' | 'unpacked'; readonly most: number }
  | { readonly code: 'archive-not-gzip'; readonly looksLike: 'zip' | 'web-page' | 'tar' | 'something-else' }
  /** The end is missing, or bytes on the way are wrong; `at` is how many bytes had been unpacked by then. */
  | { readonly code: 'archive-cut'; readonly at: number }
  | { readonly code: 'archive-not-tar' }
  /** A link, a device or a name that leads out of the folder. */
  | { readonly code: 'archive-odd-entry'; readonly name: string }
  /** Files lie at the top, or there is nothing in it. */
  | { readonly code: 'archive-no-top-folder' }
  | { readonly code: 'archive-several-top-folders'; readonly names: readonly string[] }
  /** The model is a folder deeper than it must be. */
  | { readonly code: 'archive-nested'; readonly folder: string }
  | { readonly code: 'archive-file-missing'; readonly files: readonly string[] }
  /** A model with its words built in: it cannot take a grammar, so it would hear anything as anything. */
  | { readonly code: 'archive-static-graph' }
  /** Neither words.txt nor the grammar graph says which words the model knows. */
  | { readonly code: 'archive-no-vocabulary' };

/** What can go wrong with a model before the recogniser has it. */
export type ModelFault =
  | ArchiveFault
  | { readonly code: 'model-not-found'; readonly address: string }
  | { readonly code: 'model-not-kept'; readonly reason: 'no-room' | 'no-storage' };
