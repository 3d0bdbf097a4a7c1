import { useEffect, useRef } from 'preact/hooks';
import type { BenchButton } from '../core/view/bench-view';
import type { OnUi } from './events';
import { type KeyAct, keyDown, keyUp, type Press } from './keyboard';

/** Listens for the pedal keys of the Bench; on other screens (`buttons` null) only for stop. */
export function useKeys(buttons: readonly (BenchButton | null)[] | null, on: OnUi): void {
  const latest = useRef({ buttons, on });
  latest.current = { buttons, on };
  useEffect(() => {
    let talking = false;
    const talk = (down: boolean): void => {
      if (down === talking) return;
      talking = down;
      latest.current.on({ type: 'pedal', down });
    };
    const perform = (act: KeyAct | null): void => {
      const { buttons: now, on: send } = latest.current;
      if (act?.act === 'stop') send({ type: 'command', command: 'stop', slots: 'none' });
      if (act?.act === 'talk' && (now || !act.down)) talk(act.down);
      const button = act?.act === 'button' ? now?.[act.place] : null;
      if (button) send({ type: 'command', command: button.command, slots: button.slots });
    };
    const down = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      const act = keyDown(pressOf(event));
      if (latest.current.buttons && act && act.act !== 'stop') event.preventDefault();
      perform(act);
    };
    const up = (event: KeyboardEvent): void => perform(keyUp(event.key));
    // A window that loses the keyboard never hears the key come up.
    const lost = (): void => talk(false);
    addEventListener('keydown', down);
    addEventListener('keyup', up);
    addEventListener('blur', lost);
    return () => {
      removeEventListener('keydown', down);
      removeEventListener('keyup', up);
      removeEventListener('blur', lost);
    };
  }, []);
}

function pressOf(event: KeyboardEvent): Press {
  return { key: event.key, repeat: event.repeat, focus: focusOf(event.target) };
}

function focusOf(target: EventTarget | null): Press['focus'] {
  if (document.querySelector('dialog[open]')) return 'sheet';
  if (!(target instanceof Element)) return 'page';
  if (target.closest('input, textarea, select')) return 'text';
  return target.closest('button, a, summary') ? 'control' : 'page';
}
