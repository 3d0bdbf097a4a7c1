import type { Built } from '../build/build-procedure';
import type { Report } from '../issue';

/** Everything that can only be seen by looking at more than one entry. */
export function checkWhole(_built: Built, _report: Report): void {}
