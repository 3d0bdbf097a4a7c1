import type { LiveGrammar, Manner } from '../../src/core/language/grammar';
import type { EarLanguage } from '../../src/speech/ear/armed-grammar';
/**
 * A language that knows only listed sentences: enough to try the ear without the product's grammar, and slow on purpose,
 * since everything is found by looking through the list.
 */
export declare const plainLanguage: EarLanguage;
/** A live grammar of listed sentences, each its own command. */
export declare function listed(revision: string, manners: Readonly<Record<string, Manner>>): LiveGrammar;
