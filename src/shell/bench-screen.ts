import type { Moment } from '../core/job/entry';
import type { Reply } from '../core/phrasing/reply';
import type { Tongue } from '../core/tongue';
import { benchView } from '../core/view/build-bench';
import { tappableNow } from '../core/view/tappable';
import type { DeskView } from '../machine/desk-parts';
import { faultReply } from '../machine/ear-view';
import type { Screen } from '../ui/app';
import type { Settings } from '../ui/setup/settings';
import type { Say, ScreenWords } from '../ui/words/words';
import { buttonLabel } from './button-label';
import { didSoFar, earScreen } from './ear-screen';

type BenchNow = {
  readonly seen: DeskView;
  readonly moment: Moment;
  readonly isSpeaking: boolean;
  readonly isShut: boolean;
  readonly torqueUnit: Settings['torqueUnit'];
  readonly volumeUnit: Settings['volumeUnit'];
};

/** The Bench of the open job, with the ear and the last thing said. */
export function benchScreen(tongue: Tongue, words: ScreenWords, say: Say, now: BenchNow): Screen {
  const { seen, moment, isSpeaking, isShut } = now;
  const show = (replies: readonly Reply[]): string => tongue.phrase(replies).shown;
  const view = benchView(seen.job, moment, {
    show,
    label: (rule) => buttonLabel(rule, words) ?? say('button-done'),
    examples: tongue.shown(seen.job),
    alsoIn: {
      ...(now.torqueUnit === 'as-printed' ? {} : { torque: now.torqueUnit }),
      ...(now.volumeUnit === 'as-printed' ? {} : { volume: now.volumeUnit }),
    },
  });
  const trouble = seen.ear.fault ? tongue.phrase([{ code: faultReply(seen.ear.fault), slots: {} }]).shown : null;
  return {
    name: 'bench',
    view,
    tappable: () => tappableNow(seen.job, tongue),
    ear: earScreen(seen, { isSpeaking, isShut, trouble, say, did: didSoFar(seen, show, say) }),
    said: seen.said?.shown ?? null,
  };
}
