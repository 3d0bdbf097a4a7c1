import { useWords } from '../words/words-context';

/** Which keys a pedal or a remote has to send. The keys themselves are in keyboard.ts. */
export function PedalKeys() {
  const w = useWords();
  return (
    <section>
      <h2>{w('setup-pedal')}</h2>
      <p>{w('pedal-means')}</p>
      <ul class="setup-list">
        <li>{w('pedal-first')}</li>
        <li>{w('pedal-second')}</li>
        <li>{w('pedal-third')}</li>
        <li>{w('pedal-fourth')}</li>
        <li>{w('pedal-talk')}</li>
        <li>{w('pedal-stop')}</li>
      </ul>
    </section>
  );
}
