import { cardHtml } from '../../core/card/card-html';
import { cardText } from '../../core/card/card-text';
import { jobCard } from '../../core/card/job-card';
import { readCardWords } from '../tongue-files';
import { EXIT } from './check';
import type { ProcedureIo } from './io';
import { withTongue } from './read';

export const CARD_USAGE = 'card FILE [--html]   prints the job card as text, or as a page ready to print';

export const card = (argv: readonly string[], io: ProcedureIo): Promise<number> => {
  const html = argv.includes('--html');
  const words = argv.filter((word) => word !== '--html');
  return withTongue(words, 1, CARD_USAGE, io, (procedure, { profile }) => {
    const print = html ? cardHtml : cardText;
    io.print(print(jobCard(procedure), readCardWords(profile.code)).trimEnd());
    return EXIT.fine;
  });
};
