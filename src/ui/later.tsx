import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';

const all: (() => Promise<unknown>)[] = [];

/** Brings what has not been opened yet, one after the other, so that the first tap on a screen need not wait for it. */
export async function bringAll(): Promise<void> {
  for (const bring of all) await bring();
}

/** A screen whose code is fetched when it is first opened, so that the Bench is there sooner. Empty until it has come. */
export function later<P extends object>(
  load: () => Promise<ComponentType<P>>,
): (props: P) => preact.JSX.Element | null {
  let loaded: ComponentType<P> | null = null;
  const bring = async (): Promise<ComponentType<P>> => {
    loaded ??= await load();
    return loaded;
  };
  all.push(bring);
  return function Later(props: P) {
    const [Screen, show] = useState<ComponentType<P> | null>(() => loaded);
    useEffect(() => {
      if (Screen) return;
      void bring().then((component) => show(() => component));
    }, [Screen]);
    return Screen ? <Screen {...props} /> : null;
  };
}
