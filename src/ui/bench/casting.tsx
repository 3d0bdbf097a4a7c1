import type { PatternDrawing } from '../../core/view/bench-view';
import { useWords } from '../words/words-context';
import { frameOf, landmarkPlace } from './casting-frame';
import { FastenerShape } from './fastener-shape';
import { afterHere, hereIn, MARK_WORDS, marksInWords } from './fastener-words';
import './casting.css';

/** The casting from its coordinates, its landmarks round it, its fasteners by number and shape. */
export function Casting({ drawing }: { readonly drawing: PatternDrawing }) {
  const w = useWords();
  const frame = frameOf(drawing);
  const here = hereIn(drawing);
  const then = afterHere(drawing);
  const named = (number: number): string => {
    const turned = drawing.fasteners.find((f) => f.number === number)?.turned;
    return turned === undefined ? String(number) : w('mark-turned', { number, turned });
  };
  const inWords = marksInWords(drawing).map((g) => `${w(g.word)}: ${g.numbers.map(named).join(', ')}.`);
  // The place of the work is drawn last, so that no neighbour lies over it.
  const ordered = [...drawing.fasteners].sort((a, b) => Number(a === here) - Number(b === here));
  return (
    <figure class="casting">
      <svg
        class="casting-drawing"
        viewBox={`${frame.left} ${frame.top} ${frame.width} ${frame.height}`}
        role="img"
        aria-label={`${drawing.say}. ${w('casting-seen', { from: drawing.viewedFrom })} ${inWords.join(' ')}`}
      >
        <polygon class="casting-outline" points={drawing.outline.map((p) => `${p.x},${p.y}`).join(' ')} />
        {drawing.landmarks.map((landmark) => {
          const place = landmarkPlace(drawing, landmark.at);
          return (
            <text
              key={landmark.say}
              class="casting-landmark"
              font-size={frame.label}
              text-anchor={place.anchor}
              transform={`translate(${place.x} ${place.y}) rotate(${place.turn})`}
              dominant-baseline="middle"
            >
              {landmark.say}
            </text>
          );
        })}
        {here && then && <line class="casting-then" x1={here.at.x} y1={here.at.y} x2={then.at.x} y2={then.at.y} />}
        {ordered.map((f) => (
          <FastenerShape
            key={f.number}
            mark={f.mark}
            here={f === here}
            x={f.at.x}
            y={f.at.y}
            radius={frame.radius}
            number={f.number}
            turned={f.turned}
          />
        ))}
      </svg>
      <figcaption class="casting-caption">
        <span class="casting-seen">{w('casting-seen', { from: drawing.viewedFrom })}</span>
        <ul class="casting-key" aria-label={w('casting-key')}>
          {MARK_WORDS.filter(([mark]) => drawing.fasteners.some((f) => f.mark === mark)).map(([mark, word]) => (
            <li key={mark}>
              <svg class="casting-key-shape" viewBox="-18 -12 36 24" aria-hidden="true">
                <FastenerShape mark={mark} here={mark === 'next'} x={0} y={0} radius={9} />
              </svg>
              {w(word)}
            </li>
          ))}
        </ul>
      </figcaption>
    </figure>
  );
}
