import type { BenchEvent } from '../core/view/bench-view';
import type { SettingChange } from './setup/settings';

export type ScreenName = 'start' | 'bench' | 'record' | 'jobs' | 'procedures' | 'procedure' | 'setup';

/** Everything a person can do on any screen. The composition root turns each into a command or an effect. */
export type UiEvent =
  | BenchEvent
  /** The tap that lets the page open its one AudioContext: handle it inside the event, not after a promise. */
  | { readonly type: 'start-tapped' }
  | { readonly type: 'open-screen'; readonly name: ScreenName }
  | { readonly type: 'notice-dismissed'; readonly id: string }
  /** The practice job with someone who tells what to say; and away from it. */
  | { readonly type: 'begin-tour' }
  | { readonly type: 'end-tour' }
  // jobs
  | { readonly type: 'begin-job'; readonly procedure: string; readonly machine: string; readonly who: string }
  | { readonly type: 'resume-job'; readonly id: string }
  | { readonly type: 'brief-job'; readonly id: string }
  | { readonly type: 'hand-over-job'; readonly id: string }
  /** What still blocks closing it is looked at first. */
  | { readonly type: 'ask-closing'; readonly id: string }
  | { readonly type: 'put-closing-away' }
  | { readonly type: 'close-job'; readonly id: string }
  | { readonly type: 'delete-job'; readonly id: string }
  | { readonly type: 'open-record'; readonly job: string }
  | { readonly type: 'export'; readonly job: string; readonly as: 'json' | 'csv' | 'print' }
  | { readonly type: 'play-clip'; readonly clip: string }
  /** Notes and pictures that could not be stored: once more. */
  | { readonly type: 'keep-clips' }
  /** A job file that went another way than the log here: which of the two stays. */
  | { readonly type: 'settle-fork'; readonly keep: 'here' | 'file' }
  // files the person chose
  | {
      readonly type: 'import-files';
      readonly what: 'job' | 'procedure' | 'model';
      readonly files: readonly File[];
    }
  // procedures
  | { readonly type: 'open-procedure'; readonly id: string }
  | { readonly type: 'rehearse'; readonly procedure: string }
  | { readonly type: 'show-card'; readonly procedure: string }
  /** What is shown goes to paper. */
  | { readonly type: 'print' }
  | { readonly type: 'remove-procedure'; readonly id: string }
  // setup
  | SettingChange
  /** By the id the browser gives it; empty for the machine's own choice. */
  | { readonly type: 'choose-microphone'; readonly id: string; readonly name: string }
  | { readonly type: 'check-microphone' }
  | { readonly type: 'check-noise' }
  | { readonly type: 'check-camera' }
  /** Lines read aloud, so that the ear fits one person at one microphone. */
  | { readonly type: 'reading-open' }
  | { readonly type: 'reading-begin'; readonly person: string; readonly headset: string }
  | { readonly type: 'reading-skip' }
  | { readonly type: 'reading-close' }
  | { readonly type: 'delete-voice'; readonly id: string }
  | { readonly type: 'try-voice' }
  | { readonly type: 'keep-storage' }
  /** All that a person has here, into one file. */
  | { readonly type: 'export-everything' }
  | { readonly type: 'delete-everything' };

export type OnUi = (event: UiEvent) => void;
