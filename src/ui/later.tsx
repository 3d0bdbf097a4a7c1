import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** A screen whose code is fetched when it is first opened, so that the Bench is there sooner. Empty until it has come. */
export function later<P extends object>(
  load: () => Promise<ComponentType<P>>,
): (props: P) => preact.JSX.Element | null {
  let loaded: ComponentType<P> | null = null;
  return function Later(props: P) {
    const [Screen, show] = useState<ComponentType<P> | null>(() => loaded);
    useEffect(() => {
      if (Screen) return;
      void load().then((component) => {
        loaded = component;
        show(() => component);
      });
    }, [Screen]);
    return Screen ? <Screen {...props} /> : null;
  };
}
