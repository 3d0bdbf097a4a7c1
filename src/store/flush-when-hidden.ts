/** What a log writer offers here. */
type Flushing = { readonly flush: () => Promise<unknown> };

/**
 * Stores what waits whenever the page goes out of sight: on a phone that may be the last it hears. `pagehide` covers
 * browsers that close a page without hiding it first. The answer stops it.
 */
export function flushWhenHidden(writer: Flushing, page: EventTarget = window, view: Document = document): () => void {
  const onHide = () => void writer.flush();
  const onVisibility = () => {
    if (view.visibilityState === 'hidden') onHide();
  };
  page.addEventListener('pagehide', onHide);
  view.addEventListener('visibilitychange', onVisibility);
  return () => {
    page.removeEventListener('pagehide', onHide);
    view.removeEventListener('visibilitychange', onVisibility);
  };
}
