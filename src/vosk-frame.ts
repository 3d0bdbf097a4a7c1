import { serveFrame } from './speech/vosk/frame/serve-frame';

// The page of a model the user brings: nothing of the app is here but what feeds sound to the library.
serveFrame();
