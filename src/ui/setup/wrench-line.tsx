import { useState } from 'preact/hooks';
import { type Calibration, calibrationOf, type IsoDay, type Wrench } from '../../core/fastening/wrench';
import { isoDayWords } from '../time-words';
import { useWords } from '../words/words-context';
import { WrenchForm } from './wrench-form';

type WrenchLineProps = {
  readonly wrench: Wrench;
  readonly today: IsoDay;
  readonly onChange: (wrench: Wrench) => void;
  readonly onRemove: () => void;
};

const DUE = {
  good: 'wrench-due',
  soon: 'wrench-due-soon',
  overdue: 'wrench-overdue',
} as const satisfies Record<Exclude<Calibration, 'unknown'>, string>;

/** One wrench: what it is, how far it is to be trusted, and the form in its place where one is open. */
export function WrenchLine({ wrench, today, onChange, onRemove }: WrenchLineProps) {
  const w = useWords();
  const [open, setOpen] = useState<'nothing' | 'change' | 'checked'>('nothing');
  const close = () => setOpen('nothing');
  const named = (action: string) => w('job-action', { action, title: wrench.say });
  return (
    <li>
      <span>
        <b>{wrench.say}</b>{' '}
        {w('wrench-range', {
          least: wrench.least,
          most: wrench.most,
          graduation: wrench.graduation,
          unit: wrench.unit,
        })}
        {wrench.lever !== undefined && `, ${w('wrench-lever-is', { length: wrench.lever })}`}
        <br />
        <Trust wrench={wrench} today={today} />
      </span>
      {open === 'nothing' && (
        <>
          <button
            type="button"
            class="button button-plain"
            aria-label={named(w('setup-change'))}
            onClick={() => setOpen('change')}
          >
            {w('setup-change')}
          </button>
          <button
            type="button"
            class="button button-plain"
            onClick={() => (wrench.dropped ? setOpen('checked') : onChange({ ...wrench, dropped: true }))}
          >
            {w(wrench.dropped ? 'wrench-cleared' : 'wrench-mark-dropped')}
          </button>
          <button type="button" class="button button-plain" aria-label={named(w('setup-remove'))} onClick={onRemove}>
            {w('setup-remove')}
          </button>
        </>
      )}
      {open === 'change' && (
        <WrenchForm
          wrench={wrench}
          onSave={(read) => {
            close();
            onChange({ id: wrench.id, dropped: wrench.dropped, ...read });
          }}
          onLeave={close}
        />
      )}
      {open === 'checked' && (
        <CheckedForm
          onSave={(due) => {
            close();
            const { calibrationDue: _before, ...rest } = wrench;
            onChange({ ...rest, dropped: false, ...(due === '' ? {} : { calibrationDue: due }) });
          }}
          onLeave={close}
        />
      )}
    </li>
  );
}

function Trust({ wrench, today }: Pick<WrenchLineProps, 'wrench' | 'today'>) {
  const w = useWords();
  const calibration = calibrationOf(wrench, today);
  const words =
    calibration === 'unknown' || wrench.calibrationDue === undefined
      ? w('wrench-due-unknown')
      : w(DUE[calibration], { day: isoDayWords(w, wrench.calibrationDue) });
  return (
    <>
      {calibration === 'good' || calibration === 'unknown' ? (
        <span class="quiet">{words}</span>
      ) : (
        <strong class="mark">{words}</strong>
      )}{' '}
      {wrench.dropped && <strong class="mark">{w('wrench-dropped')}</strong>}
    </>
  );
}

type CheckedFormProps = { readonly onSave: (due: string) => void; readonly onLeave: () => void };

/** After a drop it is trusted again from a calibration on, which has a day of its own; the one from before the drop is void. */
function CheckedForm({ onSave, onLeave }: CheckedFormProps) {
  const w = useWords();
  return (
    <form
      class="setup-row"
      onSubmit={(event) => {
        event.preventDefault();
        onSave(String(new FormData(event.currentTarget).get('due') ?? ''));
      }}
    >
      <label class="field">
        {w('wrench-checked-due')}
        <input name="due" type="date" />
      </label>
      <button type="submit" class="button">
        {w('setup-save')}
      </button>
      <button type="button" class="button button-plain" onClick={onLeave}>
        {w('setup-leave')}
      </button>
    </form>
  );
}
