import type { Printed } from '../../core/fastening/quantity';
import type { Pass, Pattern, Procedure } from '../../core/procedure/procedure';
import type { PatternDrawing } from '../../core/view/bench-view';
import { Casting } from '../bench/casting';
import { ScrollArea } from '../scroll-area';
import type { Say } from '../words/words';
import { useWords } from '../words/words-context';
import { Recoveries } from './recoveries';
import './pass-page.css';

type PassPageProps = {
  /** Of the step, "2.4": the same bolts may be tightened in more than one. */
  readonly number: string;
  readonly passes: readonly Pass[];
  readonly pattern: Pattern;
  readonly procedure: Procedure;
};

/** A tightening on paper: the casting with its numbers, then pass after pass with target, order, tool and lubrication. */
export function PassPage({ number, passes, pattern, procedure }: PassPageProps) {
  const w = useWords();
  return (
    <>
      <div class="pass-drawing">
        <Casting drawing={drawn(pattern)} />
      </div>
      <ScrollArea class="passes" label={w('phase-title', { number, phase: pattern.say })}>
        <table class="passes-table">
          <thead>
            <tr>
              <th scope="col">{w('pass-column')}</th>
              <th scope="col">{w('pass-target')}</th>
              <th scope="col">{w('pass-order')}</th>
              <th scope="col">{w('pass-tool')}</th>
            </tr>
          </thead>
          <tbody>
            {passes.map((pass, i) => (
              <tr key={pass.id}>
                <th scope="row">
                  {i + 1}. {pass.say}
                </th>
                <td>{targetWords(pass, procedure, w)}</td>
                <td>
                  {pass.order.join(', ')}
                  {pass.generated && <span class="quiet"> {w('pass-generated')}</span>}
                </td>
                <td>
                  {[pass.tool && (procedure.tools.get(pass.tool)?.say ?? pass.tool), pass.lubrication]
                    .filter(Boolean)
                    .join(', ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollArea>
      <Recoveries passes={passes} />
    </>
  );
}

/** Every fastener open: a document has no state. */
const drawn = (pattern: Pattern): PatternDrawing => ({
  ...pattern,
  fasteners: pattern.fasteners.map((f) => ({ number: f.number, at: f.at, mark: 'open', turn: null })),
});

/** As the document prints it, with what it prints beside it. */
const printedWords = ({ printed, also = [] }: Printed): string =>
  also.length === 0 ? printed : `${printed} (${also.map((a) => a.printed).join(', ')})`;

function targetWords(pass: Pass, procedure: Procedure, w: Say): string {
  switch (pass.kind) {
    case 'torque':
      return printedWords(pass.target);
    case 'repeat':
      return w('pass-repeat', { target: printedWords(pass.target) });
    case 'angle':
      return `${w('pass-angle', { degrees: pass.degrees, least: pass.window.least, most: pass.window.most })}${
        pass.floor ? `, > ${printedWords(pass.floor)}` : ''
      }`;
    case 'slacken':
      return w('pass-slacken', { degrees: pass.degrees });
    case 'wait':
      return w('step-wait', {
        timer: procedure.timers.get(pass.timer)?.say ?? pass.timer,
        minutes: procedure.timers.get(pass.timer)?.minutes ?? '',
      });
  }
}
