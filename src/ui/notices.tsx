import type { OnUi, UiEvent } from './events';
import { letGo } from './let-go';
import { useWords } from './words/words-context';
import './notices.css';

/** Something the person must know about the program itself, in words ready to show. */
export type Notice = {
  readonly id: string;
  /** Trouble is read out at once and stays until it is mended; news can be put away. */
  readonly kind: 'trouble' | 'news';
  readonly text: string;
  /** What can be done about it, as buttons. */
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
          <p>{notice.text}</p>
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
