import type { Procedure, Step } from '../../core/procedure/procedure';
import { HazardLines } from '../bench/hazards';
import { useWords } from '../words/words-context';
import { PassPage } from './pass-page';
import './step-page.css';

type StepPageProps = { readonly step: Step; readonly number: string; readonly procedure: Procedure };

/** One step as it is read: hazards first, then what to do, then what it needs, asks, opens and closes. */
export function StepPage({ step, number, procedure }: StepPageProps) {
  const w = useWords();
  const hazards = [
    ...step.warnings.map((text) => ({ kind: 'warning' as const, text })),
    ...step.cautions.map((text) => ({ kind: 'caution' as const, text })),
    ...step.notes.map((text) => ({ kind: 'note' as const, text })),
  ];
  const ends = (ids: readonly string[]) => ids.map((id) => procedure.looseEnds.get(id)?.say ?? id).join(', ');
  const needs = [
    ...step.tools.map((id) => procedure.tools.get(id)?.say ?? id),
    ...step.parts.map((id) => procedure.parts.get(id)?.say ?? id),
  ];
  const pattern = 'pattern' in step ? procedure.patterns.get(step.pattern) : undefined;
  return (
    <li class="step">
      <span class="step-number">{number}</span>
      <div class="step-body">
        <HazardLines hazards={hazards} />
        <p class="step-say">{step.say}</p>
        {needs.length > 0 && <p class="quiet">{w('step-needs', { needs: needs.join(', ') })}</p>}
        {step.opens.length > 0 && <p class="quiet">{w('step-opens', { ends: ends(step.opens) })}</p>}
        {step.closes.length > 0 && <p class="quiet">{w('step-closes', { ends: ends(step.closes) })}</p>}
        {step.kind === 'fill' && <p>{w('step-fill', { what: step.what, amount: step.amount.printed })}</p>}
        {step.kind === 'wait' && (
          <p>
            {w('step-wait', {
              timer: procedure.timers.get(step.timer)?.say ?? step.timer,
              minutes: procedure.timers.get(step.timer)?.minutes ?? '',
            })}
          </p>
        )}
        {step.kind === 'measure' && (
          <ul class="step-list">
            {step.readings.map((r) => (
              <li key={r.id}>{w('step-reading', { reading: r.say, unit: r.unit })}</li>
            ))}
          </ul>
        )}
        {step.question && (
          <div class="step-question">
            <p>
              <b>{w('step-question')}</b> {step.question.ask}
            </p>
            <ul class="step-list">
              {step.question.answers.map((a) => (
                <li key={a.id}>
                  <q>{a.say[0]}</q> {w(a.right ? 'answer-right' : 'answer-wrong')}
                </li>
              ))}
            </ul>
          </div>
        )}
        {'passes' in step && pattern && (
          <PassPage number={number} passes={step.passes} pattern={pattern} procedure={procedure} />
        )}
      </div>
    </li>
  );
}
