import { fail, ok, type Result } from '../../core/result';
import type { Recorded } from '../sound/record-sound';

export type StillFault = {
  readonly code: 'no-camera' | 'refused' | 'busy' | 'failed';
  readonly detail: string;
};

/** The longer side, in pixels: enough to read a part number. */
const LONGEST_SIDE = 1600;
const MOST_BYTES = 2_000_000;
/** A camera needs a moment for its exposure. */
const SETTLE_MS = 700;
/** One that gives no picture by then gives none. */
const PATIENCE_MS = 10_000;
const QUALITIES = [0.85, 0.6, 0.35];

/** What the browser calls it (Media Capture and Streams, getUserMedia), and what it is for us. */
const FAULTS: Readonly<Record<string, StillFault['code']>> = {
  NotAllowedError: 'refused',
  SecurityError: 'refused',
  NotFoundError: 'no-camera',
  OverconstrainedError: 'no-camera',
  NotReadableError: 'busy',
  AbortError: 'busy',
};

/** A still, and how the camera it is from calls itself. */
export type Still = Recorded & { readonly camera: string };

/**
 * One picture from the camera on the back, taken without a look at the screen. The camera is let go of at once. `asking`
 * is told where the browser will ask first.
 */
export async function takeStill(asking: () => void): Promise<Result<Still, StillFault>> {
  let stream: MediaStream;
  try {
    if (await willAsk()) asking();
    const size = { width: { ideal: LONGEST_SIDE }, facingMode: { ideal: 'environment' } };
    stream = await navigator.mediaDevices.getUserMedia({ video: size });
  } catch (error) {
    return faultOf(error);
  }
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  try {
    video.srcObject = stream;
    await Promise.race([video.play(), late()]);
    await after(SETTLE_MS);
    const still = await jpegOf(video);
    return still.ok ? ok({ ...still.value, camera: stream.getVideoTracks()[0]?.label ?? '' }) : still;
  } catch (error) {
    return faultOf(error);
  } finally {
    for (const track of stream.getTracks()) track.stop();
    video.srcObject = null;
  }
}

function faultOf(error: unknown) {
  const name = error instanceof Error ? error.name : '';
  return fail({ code: FAULTS[name] ?? 'failed', detail: String(error) });
}

/** Not every browser knows this permission by name; one that does not may ask unannounced. */
async function willAsk(): Promise<boolean> {
  try {
    return (await navigator.permissions.query({ name: 'camera' })).state === 'prompt';
  } catch {
    return false;
  }
}

const after = (ms: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, ms));

async function late(): Promise<never> {
  await after(PATIENCE_MS);
  throw new DOMException('the camera gives no picture', 'AbortError');
}

async function jpegOf(video: HTMLVideoElement): Promise<Result<Recorded, StillFault>> {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(video.videoWidth, video.videoHeight));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(video.videoWidth * scale);
  canvas.height = Math.round(video.videoHeight * scale);
  canvas.getContext('2d')?.drawImage(video, 0, 0, canvas.width, canvas.height);
  for (const quality of QUALITIES) {
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
    if (!blob) return fail({ code: 'failed', detail: 'the camera gave an empty picture' });
    if (blob.size <= MOST_BYTES) return ok({ mime: 'image/jpeg', bytes: new Uint8Array(await blob.arrayBuffer()) });
  }
  return fail({ code: 'failed', detail: `over ${MOST_BYTES} bytes at the lowest quality` });
}
