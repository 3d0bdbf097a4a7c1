import { Field } from './phrasing/field';
import type { ReplyIssue } from './phrasing/reply-issue';
import { fail, ok, type Result } from './result';

/** What is true of a language as a whole: its language.yaml, and the name of its folder. */
export type LanguageProfile = {
  /** As documents and settings write it, and the page's `lang`. */
  readonly code: string;
  /** As its own speakers call it. */
  readonly name: string;
  /** The folder of its acoustic model inside the soundswallower package. */
  readonly model: string;
  /** Whether the embedded voice speaks it. Where it does not, a voice of the machine does, or none. */
  readonly builtInVoice: boolean;
  /** Short words of everyday talk that sound like commands: they are recognised, and refused. */
  readonly stray: readonly string[];
  /** The id of the document that the tour is held on. */
  readonly tour: string;
};

/** Reads the plain data of a language.yaml. */
export function readProfile(code: string, raw: unknown): Result<LanguageProfile, readonly ReplyIssue[]> {
  const issues: ReplyIssue[] = [];
  const file = Field.root(raw, issues).only(['name', 'model', 'built-in-voice', 'stray', 'tour']);
  const profile: LanguageProfile = {
    code,
    name: file.key('name').text(),
    model: file.key('model').text(),
    builtInVoice: file.key('built-in-voice').truth(),
    stray: file.key('stray').texts(),
    tour: file.key('tour').text(),
  };
  return issues.length > 0 ? fail(issues) : ok(profile);
}
