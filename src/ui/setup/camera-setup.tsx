import type { OnUi } from '../events';
import { Progress } from '../progress';
import type { PlainKey } from '../words/words';
import { useWords } from '../words/words-context';
import './camera-setup.css';

export type CameraCheck =
  | { readonly state: 'unchecked' | 'checking' }
  /** The browser has a question of its own first. */
  | { readonly state: 'asking' }
  /** The still, and how the camera calls itself; the browser may keep that back. */
  | { readonly state: 'taken'; readonly url: string; readonly camera: string }
  | { readonly state: 'no-camera' | 'refused' | 'busy' | 'failed' };

const WORDS: Readonly<Record<Exclude<CameraCheck['state'], 'taken' | 'checking' | 'asking'>, PlainKey>> = {
  unchecked: 'camera-unchecked',
  'no-camera': 'camera-none',
  refused: 'camera-refused',
  busy: 'camera-busy',
  failed: 'camera-failed',
};

/** Whether pictures can be taken, tried while the hands are clean: the browser asks for the camera here, and not in a job. */
export function CameraSetup({ camera, on }: { readonly camera: CameraCheck; readonly on: OnUi }) {
  const w = useWords();
  const isBusy = camera.state === 'checking' || camera.state === 'asking';
  return (
    <section>
      <h2>{w('setup-camera')}</h2>
      <div class="setup-row">
        <button type="button" class="button" disabled={isBusy} onClick={() => on({ type: 'check-camera' })}>
          {w('camera-check')}
        </button>
      </div>
      <div role="status">{told(camera)}</div>
      {camera.state === 'taken' && <img class="camera-still" src={camera.url} alt={w('camera-still')} />}
    </section>
  );

  function told(is: CameraCheck) {
    switch (is.state) {
      case 'checking':
      case 'asking':
        return <Progress says={w(is.state === 'asking' ? 'camera-asking' : 'camera-checking')} share={null} />;
      case 'taken':
        return <p>{is.camera === '' ? w('camera-works') : w('camera-works-named', { camera: is.camera })}</p>;
      default:
        return <p>{w(WORDS[is.state])}</p>;
    }
  }
}
