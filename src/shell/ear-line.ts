import { reply } from '../core/phrasing/reply';
import type { Tongue } from '../core/tongue';
import { placeLine } from '../core/view/place-line';
import { faultReply } from '../machine/ear-view';
import type { EarLineProps } from '../ui/ear-line';
import { earScreen } from './ear-screen';
import type { PorchView } from './porch/porch-desk';
import type { Rooms } from './rooms';

/** The ear's line under a screen: of the open job, or of the porch. Null while nobody listens. */
export function earLine({ seat, sound, say }: Rooms, porch: PorchView | null, tongue: Tongue): EarLineProps | null {
  const desk = seat.open?.desk.snapshot;
  const seen = desk ?? porch;
  if (!seen || !sound.isOpen) return null;
  const { fault } = seen.ear;
  const trouble = fault && tongue.phrase([reply(faultReply(fault), {})]).shown;
  return {
    // The answer stands nowhere else on these screens.
    ear: earScreen(seen, {
      isSpeaking: sound.isSounding,
      isShut: sound.ear.isShutBy('pedal'),
      trouble,
      say,
      did: seen.said?.shown ?? '',
    }),
    place: desk ? tongue.phrase(placeLine(desk.job)).shown : null,
  };
}
