import type { Procedure } from '../core/procedure/procedure';
import type { Screen } from '../ui/app';
import type { Say, ScreenWords } from '../ui/words/words';
import { textOf } from './file-text';
import type { Library, Shelved } from './library';
import type { NoticeBoard } from './notice-board';

/** A document is text written by hand: nothing longer is one. In megabytes. */
const MOST_MEGABYTES = 2;

/** The document being read, and those that are brought in. */
export class ProcedureDesk {
  #reading: Shelved | null = null;
  #card: Screen | null = null;

  constructor(
    private readonly library: Library,
    private readonly say: Say,
    private readonly notices: NoticeBoard,
    private readonly words: ScreenWords,
    private readonly language: string,
  ) {}

  open(id: string): void {
    this.#reading = this.library.find(id);
    this.#card = null;
  }

  /** Its job card in place of its pages. */
  async openCard(id: string): Promise<void> {
    this.open(id);
    const procedure = this.#reading?.procedure;
    if (procedure) await this.cardOf(procedure);
  }

  /** The card of a document as a job has it, which may be another text than the one on the shelf. */
  async cardOf(procedure: Procedure): Promise<void> {
    this.#card = (await import('./card-screen')).cardScreen(procedure, this.words);
  }

  /** True where the document is shown now: it was taken in, or it has issues to be looked at. */
  async bring(file: File): Promise<boolean> {
    const text = await textOf(file, MOST_MEGABYTES, this.say, this.notices);
    if (text === null) return false;
    const { outcome, shelved } = await this.library.bring(text, file.name);
    const title = shelved.procedure?.title ?? '';
    this.notices.clear('procedure');
    switch (outcome) {
      case 'new':
        this.notices.news('procedure', this.say('procedure-brought', { title }));
        break;
      case 'replaced':
        this.notices.news('procedure', this.say('procedure-replaced', { title }));
        break;
      case 'id-taken':
        this.notices.news('procedure', this.say('procedure-id-taken', { id: shelved.id }));
        break;
      case 'not-usable':
        this.notices.news('procedure', this.say('procedure-not-usable', { file: file.name }));
        break;
    }
    this.#reading = shelved;
    this.#card = null;
    return true;
  }

  screen(people: readonly string[]): Screen | null {
    if (this.#card) return this.#card;
    if (!this.#reading) return null;
    const { id, procedure, text, issues } = this.#reading;
    const otherLanguage = procedure && procedure.language !== this.language ? procedure.language : null;
    return { name: 'procedure', procedure, id, source: text, issues, otherLanguage, people };
  }
}
