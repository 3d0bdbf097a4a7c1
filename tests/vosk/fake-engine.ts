import type { Answer, Engine } from '../../src/speech/vosk/frame/engine';
import { Listening } from '../../src/speech/vosk/frame/listening';
import type { FromFrame, SaidWord } from '../../src/speech/vosk/frame-messages';

export const RATE_HZ = 16_000;

/** A recogniser of the library as the listening sees it, which answers when the test says so. */
export class FakeSession {
  fed = 0;
  finished = 0;
  removed = false;

  constructor(
    readonly phrases: readonly string[],
    readonly sampleRate: number,
    readonly answer: (answer: Answer) => void,
  ) {}

  partial(words = ''): void {
    this.answer({ kind: 'partial', words });
  }

  /** Words of a third of a second each, the first beginning at `from` seconds. */
  result(words: string, from = 1): void {
    const said = words === '' ? [] : words.split(' ');
    this.answer({
      kind: 'result',
      words: said.map((word, n): SaidWord => ({ word, conf: 1, start: from + n / 3, end: from + (n + 1) / 3 })),
    });
  }
}

/** A listening on such recognisers, its events kept. */
export class Rig {
  readonly sessions: FakeSession[] = [];
  readonly events: FromFrame[] = [];
  readonly listening: Listening;
  /** What partial answers say. */
  saying = '';
  /** Of the sound: as loud as the room, or louder. */
  amplitude = 0.01;
  /** Since the microphone opened. */
  heardSeconds = 0;

  constructor() {
    const engine: Engine = {
      open: (sampleRate, phrases, answer) => {
        const session = new FakeSession(phrases, sampleRate, answer);
        this.sessions.push(session);
        return {
          feed: () => {
            session.fed += 1;
          },
          finish: () => {
            session.finished += 1;
          },
          remove: () => {
            session.removed = true;
          },
        };
      },
    };
    this.listening = new Listening(engine, (event) => this.events.push(event));
  }

  arm(revision: string): void {
    this.listening.arm({ type: 'arm', revision, phrases: [revision, '[unk]'] });
  }

  /** Sound in blocks as the worklet sends them. With `prompt` each chunk is answered at once. */
  hear(seconds: number, prompt = true): void {
    for (let n = 0; n < Math.round((seconds * RATE_HZ) / 480); n += 1) {
      const before = this.fed;
      this.listening.push(new Float32Array(480).fill(this.amplitude));
      this.heardSeconds += 480 / RATE_HZ;
      if (prompt) for (let chunk = before; chunk < this.fed; chunk += 1) this.latest?.partial(this.saying);
    }
  }

  /** Chunks sent to all recognisers together. */
  get fed(): number {
    return this.sessions.reduce((sum, session) => sum + session.fed, 0);
  }

  get latest(): FakeSession | undefined {
    return this.sessions.at(-1);
  }

  of<T extends FromFrame['type']>(type: T): readonly Extract<FromFrame, { type: T }>[] {
    return this.events.filter((event): event is Extract<FromFrame, { type: T }> => event.type === type);
  }
}

/** Microphone open, grammar armed, the first recogniser at work. */
export function atWork(): Rig {
  const rig = new Rig();
  rig.listening.listen(RATE_HZ);
  rig.arm('one');
  rig.hear(1);
  return rig;
}
