import { z } from 'zod';
import { document } from './document';

/** The shape of a procedure document as JSON Schema (draft 2020-12) text, for completion and hints in editors. */
export function editorSchema(): string {
  const schema = z.toJSONSchema(document, { io: 'input' });
  return `${JSON.stringify({ title: 'Wrenchside procedure document, format 1', ...schema }, null, 2)}\n`;
}
