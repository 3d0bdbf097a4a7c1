import type { CameraCheck } from '../../ui/setup/camera-setup';
import type { ClipParts } from '../clips/clips';

export type CameraParts = {
  readonly still: ClipParts['still'];
  readonly url: ClipParts['url'];
  readonly changed: () => void;
};

/** Setup's look through the camera that pictures are taken with. The still is shown and kept nowhere. */
export class CameraTry {
  now: CameraCheck = { state: 'unchecked' };
  #release = (): void => undefined;

  constructor(private readonly parts: CameraParts) {}

  async check(): Promise<void> {
    if (this.now.state === 'checking' || this.now.state === 'asking') return;
    this.#show({ state: 'checking' });
    const still = await this.parts.still(() => this.#show({ state: 'asking' }));
    if (!still.ok) {
      this.#show({ state: still.error.code });
      return;
    }
    const { camera, ...recorded } = still.value;
    const { url, release } = this.parts.url({ id: 'camera-check', ...recorded });
    this.#show({ state: 'taken', url, camera });
    this.#release = release;
  }

  #show(now: CameraCheck): void {
    this.#release();
    this.#release = () => undefined;
    this.now = now;
    this.parts.changed();
  }
}
