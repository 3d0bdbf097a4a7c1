import { useEffect, useRef } from 'preact/hooks';
import type { BenchButton } from '../core/view/bench-view';
import type { OnUi } from './events';
import { type KeyAct, keyDown, keyUp, type Press } from './keyboard';

/**
 * Listens for the pedal keys of the Bench; on other screens (`buttons` null) for stop, and for the key that is held to
 * talk where the ear waits for it.
 */
export function useKeys(buttons: readonly (BenchButton | null)[] | null, isAwaited: boolean, on: OnUi): void {
  const latest = useRef({ buttons, isAwaited, on });
  latest.current = { buttons, isAwaited, on };
  useEffect(() => {
    let talking = false;
    const talk = (down: boolean): void => {
      if (down === talking) return;
      talking = down;
      latest.current.on({ type: 'pedal', down });
    };
    const perform = (act: KeyAct | null): void => {
      const { buttons: now, isAwaited: awaited, on: send } = latest.current;
      if (act?.act === 'stop') send({ type: 'command', command: 'stop', slots: 'none' });
      if (act?.act === 'talk' && (now || awaited || !act.down)) talk(act.down);
      const button = act?.act === 'button' ? now?.[act.place] : null;
      if (button) send({ type: 'command', command: button.command, slots: button.slots });
    };
    const down = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey) return;
      const act = keyDown(pressOf(event));
      perform(act);
      if (act && act.act !== 'stop' && (latest.current.buttons || talking)) event.preventDefault();
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
