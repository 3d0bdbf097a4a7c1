import { useRef, useState } from 'preact/hooks';
import type { OnUi } from '../events';
import { useWords } from '../words/words-context';
import './talk-controls.css';

/** For where the voice will not do: hold to talk, or type what would have been said. */
export function TalkControls({ on }: { readonly on: OnUi }) {
  const w = useWords();
  const [words, setWords] = useState('');
  return (
    <div class="talk">
      <HoldToTalk on={on} />
      <form
        class="talk-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (words.trim() === '') return;
          on({ type: 'typed', words: words.trim() });
          setWords('');
        }}
      >
        <input
          class="boxed talk-field"
          type="text"
          aria-label={w('typed-label')}
          placeholder={w('typed-label')}
          autocomplete="off"
          autocapitalize="none"
          spellcheck={false}
          enterkeyhint="send"
          value={words}
          onInput={(event) => setWords(event.currentTarget.value)}
        />
        <button type="submit" class="boxed talk-send">
          {w('typed-send')}
        </button>
      </form>
    </div>
  );
}

/** Down while held, by finger or by key. Leaving the button or the page ends it: an ear never stays open by mistake. */
function HoldToTalk({ on }: { readonly on: OnUi }) {
  const w = useWords();
  const held = useRef(false);
  const [shown, setShown] = useState(false);
  const hold = (down: boolean) => {
    if (held.current === down) return;
    held.current = down;
    setShown(down);
    on({ type: 'pedal', down });
  };
  return (
    <button
      type="button"
      class="boxed talk-hold"
      aria-pressed={shown}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        hold(true);
      }}
      onPointerUp={() => hold(false)}
      onPointerCancel={() => hold(false)}
      onLostPointerCapture={() => hold(false)}
      onKeyDown={(event) => {
        if (event.key === ' ' && !event.repeat) hold(true);
      }}
      onKeyUp={(event) => {
        if (event.key === ' ') hold(false);
      }}
      onBlur={() => hold(false)}
      onContextMenu={(event) => event.preventDefault()}
    >
      {w('hold-to-talk')}
    </button>
  );
}
