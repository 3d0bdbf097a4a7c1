import { createContext } from 'preact';
import { useContext } from 'preact/hooks';
import type { Say } from './words';

/** The words of the chosen language; `App` provides them, so that no component has to hand them down. */
export const WordsContext = createContext<Say | null>(null);

export function useWords(): Say {
  const say = useContext(WordsContext);
  if (!say) throw new Error('a screen was drawn outside App, without its words');
  return say;
}
