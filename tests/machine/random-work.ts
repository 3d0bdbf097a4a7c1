import { type Command, command, MANNERS, type RuleName } from '../../src/core/job/command';
import { passAt } from '../../src/core/job/decide/at-pass';
import type { Job } from '../../src/core/job/job';
import { offersOf } from '../../src/core/job/offers';
import { cursorOf } from '../../src/core/job/place';
import type { SlotDomain, SlotValue } from '../../src/core/language/grammar';
import { wayForward } from './way-forward';

/** One turn of a made-up session: numbers that pick, nothing more, so that a failing one can be shrunk. */
export type Dice = { readonly kind: number; readonly rule: number; readonly slot: number; readonly wait: number };

/** Four turns in five are something that is offered; the rest nearly so. */
export function turnFrom(job: Job, dice: Dice): Command {
  const kind = dice.kind % 100;
  if (kind < 45) return wayForward(job);
  if (kind < 80) return offered(job, dice);
  return nearlyOffered(job, dice);
}

function offered(job: Job, dice: Dice): Command {
  const acting = offersOf(job).filter((o) => o.manner !== 'harmless' && o.manner !== 'stop');
  const offer = acting[dice.rule % acting.length];
  if (!offer) return command('stop');
  const slots = Object.entries(offer.slots).map(([name, domain], i) => [name, valueIn(domain, dice.slot + 7 * i)]);
  return command(offer.rule as RuleName, Object.fromEntries(slots));
}

function valueIn(domain: SlotDomain, pick: number): SlotValue {
  switch (domain.kind) {
    case 'integers':
      return { kind: 'integer', value: domain.values[pick % domain.values.length] ?? 0 };
    case 'reading': {
      const span = Math.round((domain.most - domain.least) * 10 ** domain.decimals);
      const value = domain.least + (pick % (span + 1)) / 10 ** domain.decimals;
      return { kind: 'reading', value, unit: domain.unitNeeded ? (domain.units[0] ?? null) : null };
    }
    case 'named':
      return { kind: 'option', id: domain.ids[pick % domain.ids.length] ?? '' };
    case 'options':
      return { kind: 'option', id: domain.options[pick % domain.options.length]?.id ?? '' };
  }
}

const RULES = Object.keys(MANNERS) as readonly RuleName[];

/** Any command at all, with slots that nothing here knows, or none. A grammar would not let it through; the core must. */
function nearlyOffered(job: Job, dice: Dice): Command {
  const at = passAt(job);
  const [reported, turned] = [dice.rule % 4 === 0, dice.rule % 4 === 1];
  // The worst that a tired person does: report what may not be reported, on the bolts that are in hand.
  if (at && reported) {
    const bolt = dice.slot % 2 === 0 ? Number(cursorOf(job)) : (at.pass.order[dice.slot % at.pass.order.length] ?? 0);
    return command('bolt-done', { bolt: { kind: 'integer', value: bolt } });
  }
  if (at && turned) return command('so-far', { degrees: { kind: 'integer', value: (dice.slot % 24) * 5 } });
  const rule = RULES[dice.rule % RULES.length] ?? 'stop';
  const number = (dice.slot % 23) - 1;
  const integer: SlotValue = { kind: 'integer', value: number };
  const reading: SlotValue = { kind: 'reading', value: number * 5, unit: dice.slot % 3 === 0 ? 'lbf·ft' : null };
  const option: SlotValue = { kind: 'option', id: 'nothing-of-the-kind' };
  return dice.slot % 11 === 0
    ? command(rule)
    : command(rule, {
        bolt: integer,
        from: integer,
        to: { kind: 'integer', value: number + 2 },
        degrees: { kind: 'integer', value: number * 10 },
        clock: { kind: 'integer', value: (dice.slot % 12) + 1 },
        setting: reading,
        reading,
        length: { kind: 'reading', value: number, unit: 'mm' },
        answer: option,
        place: option,
        end: option,
        item: option,
        part: option,
        person: option,
        reason: option,
      });
}

/** Milliseconds until the next turn: mostly seconds, sometimes a tea break, now and then a night. */
export function pause(dice: Dice): number {
  const spell = dice.wait % 100;
  if (spell < 85) return 1000 + (dice.wait % 40_000);
  return spell < 97 ? 200_000 + (dice.wait % 600_000) : 30 * 3_600_000;
}
