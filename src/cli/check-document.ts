import { checkProcedure, type ProcedureCheck } from '../core/procedure/check-procedure';
import { languages, readWordingFile } from './tongue-files';

const wordings = new Map(languages().map((language) => [language, readWordingFile(language)]));

/** Checks a document, in whichever of our languages it is written. */
export const checkDocument = (text: string, file: string): ProcedureCheck => checkProcedure(text, file, wordings);
