import type { LogStore } from '../core/log/log-store';
import type { ProcedureCheck } from '../core/procedure/check-procedure';
import type { ToldIssue } from '../core/procedure/finding-words';
import type { ProcedureIssue } from '../core/procedure/issue';
import type { Procedure } from '../core/procedure/procedure';
import type { ProcedureLine } from '../ui/procedures/procedures';

/** A procedure document as text; reading it into a procedure waits until it is needed. */
export type Document = { readonly file: string; readonly text: () => Promise<string> };

/** A document as it was checked. Without a procedure it has errors and cannot be worked to. */
export type Shelved = {
  readonly id: string;
  readonly file: string;
  readonly text: string;
  readonly isOwn: boolean;
  readonly procedure: Procedure | null;
  readonly issues: readonly ToldIssue[];
};

export type Brought = { readonly outcome: 'new' | 'replaced' | 'id-taken' | 'not-usable'; readonly shelved: Shelved };

export type TakenDocument = {
  readonly id: string;
  readonly title: string;
  readonly outcome: 'new' | 'same' | 'other-text' | 'id-taken' | 'not-usable';
};

const SHIPPED = import.meta.glob<string>('../../procedures/*.yaml', { query: '?raw', import: 'default' });
const KEY = 'own-documents';

/** The documents that came with the app. */
export const shippedDocuments = (): readonly Document[] =>
  Object.entries(SHIPPED).map(([path, text]) => ({ file: path.split('/').at(-1) ?? path, text }));

/** Checks a document. The YAML parser and the schema are fetched only now. */
export async function checkDocument(text: string, file: string): Promise<ProcedureCheck> {
  const { check } = await import('./checking');
  return check(text, file);
}

/** What was found, in the words of a language. */
export async function tellIssues(issues: readonly ProcedureIssue[], language: string): Promise<readonly ToldIssue[]> {
  const { tell } = await import('./checking');
  return tell(issues, language);
}

/** Every document on this machine: those that came with the app, and the person's own, which can be taken out again. */
export class Library {
  #shelf: readonly Shelved[] = [];

  constructor(
    private readonly language: string,
    private readonly store: Pick<LogStore, 'setting' | 'saveSetting'>,
    private readonly shipped: readonly Document[],
    private readonly changed: () => void,
  ) {}

  async load(): Promise<void> {
    for (const { file, text } of this.shipped) await this.#shelve(await text(), file, false);
    const own = await this.store.setting(KEY);
    for (const { file, text } of own.ok ? ownDocuments(own.value) : []) await this.#shelve(text, file, true);
  }

  get lines(): readonly ProcedureLine[] {
    const ready = this.#shelf.filter((one) => this.#isReady(one));
    return this.#shelf.map((one) => lineOf(one, this.language, ready.indexOf(one) + 1 || null));
  }

  /** Those that a job can be begun with: they have no errors, and are in the language that is heard and spoken. */
  get ready(): readonly ProcedureLine[] {
    return this.lines.filter(({ number }) => number !== null);
  }

  find(id: string): Shelved | null {
    return this.#shelf.find((one) => one.id === id) ?? null;
  }

  /** Keeps a document of the person's own, unless it has errors or its id came with the program. */
  async bring(text: string, file: string): Promise<Brought> {
    const shelved = await this.#read(text, file, true);
    if (!shelved.procedure) return { outcome: 'not-usable', shelved };
    const here = this.find(shelved.id);
    if (here && !here.isOwn) return { outcome: 'id-taken', shelved };
    this.#put(shelved);
    await this.#save();
    return { outcome: here ? 'replaced' : 'new', shelved };
  }

  /** The same out of a file that carries several: nothing that is here is replaced. */
  async take(text: string, file: string): Promise<TakenDocument> {
    const shelved = await this.#read(text, file, true);
    const { id, procedure } = shelved;
    const here = this.find(id);
    const about = { id, title: procedure?.title ?? file };
    if (here?.text === text) return { ...about, outcome: 'same' };
    if (here?.isOwn) return { ...about, outcome: 'other-text' };
    const { outcome } = await this.bring(text, file);
    return { ...about, outcome: outcome === 'replaced' ? 'new' : outcome };
  }

  /** The person's own, as they were brought. */
  get own(): readonly { readonly file: string; readonly text: string }[] {
    return this.#shelf.filter(({ isOwn }) => isOwn).map(({ file, text }) => ({ file, text }));
  }

  async remove(id: string): Promise<void> {
    this.#shelf = this.#shelf.filter((one) => one.id !== id || !one.isOwn);
    await this.#save();
    this.changed();
  }

  async removeOwn(): Promise<void> {
    for (const { id, isOwn } of this.#shelf) if (isOwn) await this.remove(id);
  }

  async #shelve(text: string, file: string, isOwn: boolean): Promise<void> {
    this.#put(await this.#read(text, file, isOwn));
  }

  async #read(text: string, file: string, isOwn: boolean): Promise<Shelved> {
    const checked = await checkDocument(text, file);
    const procedure = checked.ok ? checked.value : null;
    const found = [...(checked.ok ? [] : checked.error), ...checked.warnings];
    return { id: procedure?.id ?? file, file, text, isOwn, procedure, issues: await tellIssues(found, this.language) };
  }

  #isReady({ procedure }: Shelved): boolean {
    return procedure?.language === this.language;
  }

  #put(shelved: Shelved): void {
    this.#shelf = [...this.#shelf.filter(({ id }) => id !== shelved.id), shelved];
    this.changed();
  }

  async #save(): Promise<void> {
    await this.store.saveSetting(KEY, this.own);
  }
}

const lineOf = (
  { id, file, isOwn, procedure, issues }: Shelved,
  language: string,
  number: number | null,
): ProcedureLine => ({
  number,
  id,
  title: procedure?.title ?? file,
  edition: procedure?.edition ?? '',
  machine: procedure?.machine ?? '',
  demonstration: procedure?.demonstration ?? false,
  otherLanguage: procedure && procedure.language !== language ? procedure.language : null,
  errors: issues.filter(({ severity }) => severity === 'error').length,
  warnings: issues.filter(({ severity }) => severity === 'warning').length,
  own: isOwn,
});

/** What the store or a file gives back, as far as it is what we put there. */
export function ownDocuments(saved: unknown): readonly { readonly file: string; readonly text: string }[] {
  if (!Array.isArray(saved)) return [];
  return saved.flatMap((one: unknown) => {
    if (typeof one !== 'object' || one === null || !('file' in one) || !('text' in one)) return [];
    const { file, text } = one;
    return typeof file === 'string' && typeof text === 'string' ? [{ file, text }] : [];
  });
}
