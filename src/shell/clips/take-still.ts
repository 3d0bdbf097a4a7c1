import { fail, ok, type Result } from '../../core/result';
import type { Recorded } from '../sound/record-sound';

export type StillFault = { readonly code: 'no-camera' | 'too-big'; readonly detail: string };

/** The longer side, in pixels: enough to read a part number. */
const LONGEST_SIDE = 1600;
const MOST_BYTES = 2_000_000;
/** A camera needs a moment for its exposure. */
const SETTLE_MS = 700;
const QUALITIES = [0.85, 0.6, 0.35];

/** One picture from the camera on the back, taken without a look at the screen. The camera is let go of at once. */
export async function takeStill(): Promise<Result<Recorded, StillFault>> {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  let stream: MediaStream;
  try {
    const size = { width: { ideal: LONGEST_SIDE }, facingMode: { ideal: 'environment' } };
    stream = await navigator.mediaDevices.getUserMedia({ video: size });
  } catch (error) {
    return fail({ code: 'no-camera', detail: String(error) });
  }
  try {
    video.srcObject = stream;
    await video.play();
    await new Promise((resolve) => setTimeout(resolve, SETTLE_MS));
    return await jpegOf(video);
  } catch (error) {
    return fail({ code: 'no-camera', detail: String(error) });
  } finally {
    for (const track of stream.getTracks()) track.stop();
    video.srcObject = null;
  }
}

async function jpegOf(video: HTMLVideoElement): Promise<Result<Recorded, StillFault>> {
  const scale = Math.min(1, LONGEST_SIDE / Math.max(video.videoWidth, video.videoHeight));
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(video.videoWidth * scale);
  canvas.height = Math.round(video.videoHeight * scale);
  canvas.getContext('2d')?.drawImage(video, 0, 0, canvas.width, canvas.height);
  for (const quality of QUALITIES) {
    const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', quality));
    if (!blob) return fail({ code: 'no-camera', detail: 'the camera gave an empty picture' });
    if (blob.size <= MOST_BYTES) return ok({ mime: 'image/jpeg', bytes: new Uint8Array(await blob.arrayBuffer()) });
  }
  return fail({ code: 'too-big', detail: `over ${MOST_BYTES} bytes at the lowest quality` });
}
