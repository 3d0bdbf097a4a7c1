import type { OnUi, UiEvent } from './events';
import { letGo } from './let-go';
import { Progress } from './progress';
import { useWords } from './words/words-context';
import './notices.css';

/** Something the person must know about the program itself, in words ready to show. */
export type Notice = {
  readonly id: string;
  /** Trouble is read out at once and stays until it is mended; news can be put away; work goes by itself when it is done. */
  readonly kind: 'trouble' | 'news' | 'work';
  readonly text: string;
  /** What can be done about it, as buttons. */
  /** Of work: the share that is done, from 0 to 1; null where nobody can tell. */
  readonly share?: number | null;
  readonly acts?: readonly { readonly label: string; readonly event: UiEvent }[];
};

export function Notices({ notices, on }: { readonly notices: readonly Notice[]; readonly on: OnUi }) {
  const w = useWords();
  return (
    <div class="notices">
      {notices.map((notice) => (
        <div
          key={notice.id}
          class={`notice notice-${notice.kind}`}
          role={notice.kind === 'trouble' ? 'alert' : 'status'}
        >
          {notice.kind === 'work' ? <Progress says={notice.text} share={notice.share ?? null} /> : <p>{notice.text}</p>}
          {notice.acts?.map(({ label, event: act }) => (
            <button
              key={label}
              type="button"
              class="boxed notice-away"
              onClick={(event) => {
                letGo(event);
                on(act);
              }}
            >
              {label}
            </button>
          ))}
          {notice.kind === 'news' && (
            <button
              type="button"
              class="boxed notice-away"
              onClick={(event) => {
                letGo(event);
                on({ type: 'notice-dismissed', id: notice.id });
              }}
            >
              {w('notice-away')}
            </button>
          )}
        </div>
      ))}
    </div>
  );
}
