/** What the page and the service worker tell each other. Types only: neither side imports the other. */
export type ToKeeper =
  /** Keep everything the app needs without a network, with the acoustic model of its language. Asked again until it is done: a browser ends long work. */
  | { readonly type: 'fill'; readonly model: string }
  /** A new version may take hold now: this page has nothing under way. */
  | { readonly type: 'take-over' };

export type OfflineState =
  /** This browser, or this address, has no service worker. */
  | 'unsupported'
  | 'filling'
  /** Something could not be fetched or kept; it is tried again. */
  | 'incomplete'
  | 'ready';

export type OfflineReport = { readonly state: OfflineState; readonly keptBytes: number; readonly ofBytes: number };

export type FromKeeper = { readonly type: 'offline' } & OfflineReport;
