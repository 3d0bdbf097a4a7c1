import { pathToFileURL } from 'node:url';

/** Whether a module is the program that was started, and not a part of another one or of a test. */
export const isRunDirectly = (moduleUrl: string): boolean =>
  process.argv[1] !== undefined && moduleUrl === pathToFileURL(process.argv[1]).href;
