import type { ProcedureCheck } from '../core/procedure/check-procedure';

/** A procedure document this machine has, as text; reading it into a procedure waits until it is needed. */
export type Document = {
  readonly id: string;
  readonly file: string;
  readonly text: () => Promise<string>;
  readonly own: boolean;
};

const SHIPPED = import.meta.glob<string>('../../procedures/*.yaml', { query: '?raw', import: 'default' });

/** The documents that came with the app. */
export const shippedDocuments = (): readonly Document[] =>
  Object.entries(SHIPPED).map(([path, text]) => {
    const file = path.split('/').at(-1) ?? path;
    return { id: file.replace(/\.yaml$/, ''), file, text, own: false };
  });

/** Checks a document. The YAML parser and the schema are fetched only now. */
export async function checkDocument(text: string, file: string): Promise<ProcedureCheck> {
  const { checkProcedure } = await import('../core/procedure/check-procedure');
  return checkProcedure(text, file);
}
