import { type Reply, reply } from '../../core/phrasing/reply';
import type { Settings } from '../../ui/setup/settings';
import type { Say } from '../../ui/words/words';
import type { NoticeBoard } from '../notice-board';

type WatchParts = {
  readonly settings: () => Pick<Settings, 'microphone' | 'microphoneName'>;
  readonly say: Say;
  readonly notices: NoticeBoard;
  readonly speak: (news: Reply) => void;
};

/** Told of each microphone that is opened, it says and shows when another stands in for the chosen one, and when that is over. */
export function microphoneWatch({ settings, say, notices, speak }: WatchParts): (standsIn: boolean) => void {
  let isGone = false;
  return (standsIn) => {
    if (standsIn === isGone) return;
    isGone = standsIn;
    const { microphone, microphoneName: name } = settings();
    if (standsIn) notices.news('microphone', say('microphone-gone', { name }));
    else notices.clear('microphone');
    if (standsIn) speak(reply('microphone-other', {}));
    else if (microphone !== '') speak(reply('microphone-chosen', {}));
  };
}
