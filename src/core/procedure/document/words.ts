import { z } from 'zod';

// The page's content policy forbids building functions from text, which zod otherwise does to go faster.
z.config({ jitless: true });

/** Ids and names as written, before `for:` puts words in place of `{side}` and its like. */
const ID = /^(?:[a-z]|\{[a-z]+\})(?:[a-z0-9-]|\{[a-z]+\})*$/;

export const id = z.string().regex(ID).max(64).meta({ id: 'id' });

/** The language of everything in the document that is heard, said or shown. */
export const language = z
  .string()
  .regex(/^[a-z]{2,3}$/)
  .meta({ id: 'language' });

/** Words shown and spoken. */
export const text = z.string().regex(/\S/).max(600).meta({ id: 'text' });

/** What a thing is called, in words that fit into a sentence. */
export const name = z.string().regex(/\S/).max(100).meta({ id: 'name' });

/** A number with its unit, kept as the manual prints it. Read further on, where its place in the file is still known. */
export const quantity = z.string().regex(/\S/).max(80).meta({ id: 'quantity' });

const list = z.array(z.string().regex(/\S/).max(40)).min(1).max(24);

/** Either one list of sides, or lists of equal length read side by side; the words stand in for `{side}` or the list's own name. */
export const repeat = z.union([list, z.record(z.string().regex(/^[a-z]+$/), list)]).meta({
  id: 'for',
});

export const point = z.tuple([z.number(), z.number()]).meta({ id: 'point' });

export type Repeat = z.infer<typeof repeat>;
