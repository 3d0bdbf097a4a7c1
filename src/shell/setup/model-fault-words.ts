import type { ModelFault } from '../../speech/vosk/archive-fault';
import type { Say } from '../../ui/words/words';

/** Why an archive could not be taken for a model, in words. */
export function modelFaultWords(fault: ModelFault, say: Say): string {
  switch (fault.code) {
    case 'archive-empty':
      return say('archive-empty');
    case 'archive-too-large':
      return say('archive-too-large', { megabytes: Math.round(fault.most / 1e6) });
    case 'archive-not-gzip':
      return say(fault.looksLike === 'zip' ? 'archive-zip' : 'archive-not-gzip');
    case 'archive-cut':
      return say('archive-cut');
    case 'archive-not-tar':
      return say('archive-not-tar');
    case 'archive-odd-entry':
      return say('archive-odd-entry', { name: fault.name });
    case 'archive-no-top-folder':
      return say('archive-no-top-folder');
    case 'archive-several-top-folders':
      return say('archive-several-top-folders', { names: fault.names.join(', ') });
    case 'archive-nested':
      return say('archive-nested', { folder: fault.folder });
    case 'archive-file-missing':
      return say('archive-file-missing', { files: fault.files.join(', ') });
    case 'archive-static-graph':
      return say('archive-static-graph');
    case 'archive-no-vocabulary':
      return say('archive-no-vocabulary');
    case 'model-not-found':
      return say('model-not-found', { address: fault.address });
    case 'model-not-kept':
      return say(fault.reason === 'no-room' ? 'storage-full' : 'store-not-lasting');
  }
}
