import { existsSync } from 'node:fs';
import { type Browser, type BrowserContext, chromium } from 'playwright-core';

const FOUND = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'].find((p) => existsSync(p));

/** Where a Chromium is, by CHROMIUM or in the usual places; undefined where there is none. */
export const chromiumPath: string | undefined = process.env.CHROMIUM ?? FOUND;

if (!chromiumPath && process.env.REQUIRE_BROWSER === '1')
  throw new Error('REQUIRE_BROWSER is set and no Chromium was found: install one, or name it in CHROMIUM.');

if (!chromiumPath) console.log('BROWSER TESTS NOT RUN: no Chromium was found. Install one, or name it in CHROMIUM.');

const ARGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--no-first-run',
  // No name resolves: a request that leaves the machine fails and is seen.
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

const ALLOWED = '--use-fake-ui-for-media-stream';

type Launch = {
  /** A WAV file the fake microphone plays once. */
  readonly microphone?: string;
  /** What the system says to whoever asks for a microphone; it is there and allowed unless named here. */
  readonly microphoneIs?: 'refused' | 'missing';
  /** A folder that outlives the browser, for what must survive it. */
  readonly profile?: string;
  readonly viewport?: { readonly width: number; readonly height: number };
  /** A screen that answers to fingers. */
  readonly touch?: boolean;
  /** For tests that stand in for the server: what a service worker answers, they never see. */
  readonly serviceWorkers?: 'allow' | 'block';
};

function argsFor({ microphone, microphoneIs }: Launch): string[] {
  if (microphoneIs === 'refused') return [...ARGS, '--use-fake-device-for-media-stream', `${ALLOWED}=deny`];
  if (microphoneIs === 'missing') return [...ARGS, ALLOWED];
  const played = microphone ? [`--use-file-for-fake-audio-capture=${microphone}%noloop`] : [];
  return [...ARGS, '--use-fake-device-for-media-stream', ALLOWED, ...played];
}

/** A page in a browser of its own. With a profile the browser's process can be killed and started again on it. */
export async function openContext(launch: Launch = {}): Promise<BrowserContext> {
  const { profile, viewport, serviceWorkers = 'allow', touch = false } = launch;
  if (!chromiumPath) throw new Error('no Chromium');
  const size = viewport ?? { width: 1280, height: 800 };
  if (profile)
    return chromium.launchPersistentContext(profile, {
      executablePath: chromiumPath,
      args: argsFor(launch),
      viewport: size,
      serviceWorkers,
    });
  const browser: Browser = await chromium.launch({ executablePath: chromiumPath, args: argsFor(launch) });
  const context = await browser.newContext({ viewport: size, serviceWorkers, hasTouch: touch });
  context.on('close', () => void browser.close());
  return context;
}

/** A real browser hears in real time, on cores it shares: a test that fails is run once more, and the runner says so. */
export const ONCE_MORE = { retry: 1 } as const;
