/** What a log writer offers here. */
type Flushing = { readonly flush: () => Promise<unknown> };

/**
 * Stores what waits whenever the page goes out of sight: on a phone that may be the last it hears. The answer stops it.
 *
 * Nothing is tried when the page is already being left or closed: a database transaction begun then is aborted with the
 * page. What can be lost so is the last second of talk; a state entry never waits.
 */
export function flushWhenHidden(writer: Flushing, view: Document = document): () => void {
  const onChange = () => {
    if (view.visibilityState === 'hidden') void writer.flush();
  };
  view.addEventListener('visibilitychange', onChange);
  return () => view.removeEventListener('visibilitychange', onChange);
}
