import { h, render } from 'preact';
import { App, type AppProps, type Screen } from '../../../src/ui/app';
import { type Look, look } from './look';

type BenchScreen = Extract<Screen, { name: 'bench' }>;

/** A Bench as it can be sent to a page: what its sheet of sentences works out when it is opened is left out, or is there. */
export type BenchData = Omit<BenchScreen, 'tappable'> & { readonly sentences?: ReturnType<BenchScreen['tappable']> };

/** What a test asks of the page. */
export type Shown = Omit<AppProps, 'on' | 'closing' | 'ear' | 'screen'> & { readonly screen: BenchData };

export type BenchPage = {
  readonly draw: (shown: Shown) => void;
  /** Draws one after the other, and looks at each. */
  readonly each: (all: readonly Shown[]) => readonly Look[];
};

const root = document.getElementById('app');
if (!root) throw new Error('the page has no place for the app');

const draw = (shown: Shown): void => {
  // The app does this after the frame in which it draws.
  Object.assign(document.documentElement.dataset, { theme: shown.theme, text: shown.textSize });
  const { sentences = [], ...bench } = shown.screen;
  const screen = { ...bench, tappable: () => sentences };
  render(h(App, { ...shown, screen, closing: null, ear: null, on: () => {} }), root);
};

const each: BenchPage['each'] = (all) =>
  all.map((shown) => {
    draw(shown);
    return look();
  });

Object.assign(window, { benchPage: { draw, each } satisfies BenchPage });
