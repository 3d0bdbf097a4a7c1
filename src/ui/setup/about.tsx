import { useWords } from '../words/words-context';
import './about.css';

/** A part made by others: its name, its licence, and the words the licence asks to be shown. */
export type Acknowledgement = { readonly name: string; readonly licence: string; readonly text: string };

export function About({ acknowledgements }: { readonly acknowledgements: readonly Acknowledgement[] }) {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-about')}</h2>
      <p>{w('safety-maker-first')}</p>
      <p>{w('safety-stop')}</p>
      <p>{w('safety-record')}</p>
      <p>{w('nothing-leaves')}</p>
      {acknowledgements.map((a) => (
        <details key={a.name} class="about">
          <summary>
            {a.name} · {a.licence}
          </summary>
          <p class="about-text">{a.text}</p>
        </details>
      ))}
    </section>
  );
}
