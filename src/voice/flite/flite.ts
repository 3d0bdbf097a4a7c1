import { ConsoleStdout, File, OpenFile, PreopenDirectory, WASI } from '@bjorn3/browser_wasi_shim';
import { fail, ok, type Result } from '../../core/result';
import { plainText } from './plain-text';
import { polished } from './polish';
import { FASTEST_RATE, SLOWEST_RATE, type Speaker } from './speakers';
import { decodeWav, encodeWav, soundMs } from './wav';

export type Utterance = {
  readonly text: string;
  readonly speaker: Speaker;
  /** 1 is the speaker's own pace; see `speakers` for the ends of the range. */
  readonly rate: number;
  /** Further Flite features, for test speakers: `int_f0_target_mean` in hertz, `int_f0_target_stddev`, ... */
  readonly features?: Readonly<Record<string, number>>;
};

/** A mono 16-bit WAV, its silent ends cut short, and how long it lasts. */
export type Rendering = { readonly wav: Uint8Array<ArrayBuffer>; readonly ms: number };

export type FliteFault = { readonly code: 'nothing-to-say' | 'synthesis-failed'; readonly detail: string };

/**
 * The Flite synthesiser, the same in a worker and in Node. The build is a command-line program for WASI: it runs once
 * from start to exit, so each text gets an instance of its own (about 20 MB, let go afterwards) of one compiled module.
 */
export class Flite {
  readonly #module: WebAssembly.Module;

  constructor(module: WebAssembly.Module) {
    this.#module = module;
  }

  /** Renders on the calling thread: 15 to 100 ms for a sentence, so never on the page's own. */
  render(utterance: Utterance): Result<Rendering, FliteFault> {
    const text = plainText(utterance.text);
    if (text === '') return fail({ code: 'nothing-to-say', detail: JSON.stringify(utterance.text) });
    try {
      const raw = this.#run(['flite', ...optionsFor(utterance), '-f', '/text', '-o', '/wav'], text);
      if (!raw.ok) return raw;
      const decoded = decodeWav(raw.value);
      if (!decoded.ok) return fail({ code: 'synthesis-failed', detail: decoded.error.code });
      const sound = polished(decoded.value, utterance.speaker);
      return ok({ wav: encodeWav(sound), ms: soundMs(sound) });
    } catch (trap) {
      return fail({ code: 'synthesis-failed', detail: String(trap) });
    }
  }

  #run(args: string[], text: string): Result<Uint8Array, FliteFault> {
    const complaints: string[] = [];
    const decoder = new TextDecoder();
    const complain = new ConsoleStdout((bytes) => complaints.push(decoder.decode(bytes)));
    // The text goes in as a file: on the command line a leading "-" would be read as an option.
    const disk = new PreopenDirectory('/', new Map([['text', new File(new TextEncoder().encode(text))]]));
    const wasi = new WASI(args, [], [new OpenFile(new File([])), complain, complain, disk], { debug: false });

    const { exports } = new WebAssembly.Instance(this.#module, { wasi_snapshot_preview1: wasi.wasiImport });
    const { memory, _start: start } = exports;
    if (!(memory instanceof WebAssembly.Memory) || typeof start !== 'function') {
      return fail({ code: 'synthesis-failed', detail: 'the module is not a WASI command' });
    }
    const exitCode = wasi.start({ exports: { memory, _start: () => start() } });
    const file = disk.dir.contents.get('wav');
    if (exitCode !== 0 || !(file instanceof File)) {
      return fail({ code: 'synthesis-failed', detail: `exit code ${exitCode}: ${complaints.join('').slice(0, 200)}` });
    }
    return ok(file.data);
  }
}

function optionsFor({ speaker, rate, features = {} }: Utterance): string[] {
  const pace = Number.isFinite(rate) ? Math.min(FASTEST_RATE, Math.max(SLOWEST_RATE, rate)) : 1;
  const settings = Object.entries({ duration_stretch: 1 / pace, ...features });
  return ['-voice', speaker, ...settings.flatMap(([name, value]) => ['--setf', `${name}=${value}`])];
}
