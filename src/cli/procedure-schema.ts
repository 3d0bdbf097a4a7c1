import { writeFile } from 'node:fs/promises';
import { editorSchema } from './editor-schema/editor-schema';

/** Writes the editor schema beside the documents. Run after every change to the shape; a test notices when it was not. */
await writeFile(new URL('../../procedures/procedure.schema.json', import.meta.url), editorSchema());
