import { fail, ok, type Result } from '../../core/result';
import { Flite } from './flite';
import type { LoadFault } from './messages';

/** Fetches and compiles the synthesiser (21.5 MB). Compiling goes on while the bytes arrive where the server allows it. */
export async function loadFlite(
  url: string,
): Promise<Result<Flite, { readonly code: LoadFault; readonly detail: string }>> {
  let response: Response;
  try {
    response = await fetch(url);
  } catch (refusal) {
    return fail({ code: 'voice-not-found', detail: String(refusal) });
  }
  if (!response.ok) return fail({ code: 'voice-not-found', detail: `${response.status} for ${url}` });
  try {
    // Streaming insists on the media type, and not every static host sends it.
    const streams = response.headers.get('content-type')?.startsWith('application/wasm') === true;
    const module = streams
      ? await WebAssembly.compileStreaming(response)
      : await WebAssembly.compile(await response.arrayBuffer());
    return ok(new Flite(module));
  } catch (refusal) {
    return fail({ code: 'voice-not-wasm', detail: String(refusal) });
  }
}
