/** One octave of the decay chart: spread of the methods, error of the coefficients, the time itself. */

import type { ReactElement } from 'react';
import type { DecayBand } from '../../../core/decay/decay';
import { JUDGED_BY, verdictOf } from '../../../core/decay/verdict';
import { METHOD_IDS, METHODS, type MethodId } from '../../../core/decay/methods';
import { bandMark } from '../../../core/quantity/bands';

export interface DecayBandMarkProps {
  readonly band: DecayBand;
  /** The method drawn beside Eyring. */
  readonly second: MethodId;
  readonly at: number;
  readonly y: (seconds: number) => number;
  readonly top: number;
  readonly bottom: number;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  /** Eyring's times in the octaves before and after, which the label keeps clear of. */
  readonly neighbours: readonly [number | null, number | null];
}

export function DecayBandMark(props: DecayBandMarkProps): ReactElement {
  const { band, at, top, bottom, chosen, onChoose } = props;
  return (
    <g className="band-mark" onPointerDown={onChoose}>
      <rect x={at - 18} y={top} width={36} height={Math.max(0, bottom - top)} fill="transparent">
        <title>{told(band)}</title>
      </rect>
      {chosen ? <line className="chosen-band" x1={at} x2={at} y1={top} y2={bottom} /> : null}
      <Times {...props} />
      <text
        className={chosen ? 'tick-label chosen' : 'tick-label'}
        x={at}
        y={bottom + 15}
        textAnchor="middle"
      >
        {bandMark(band.hz)}
      </text>
    </g>
  );
}

function Times(props: DecayBandMarkProps): ReactElement {
  const { band, second, at, y, top, bottom } = props;
  const { eyringS, spreadS, coefficientBandS } = band;
  if (eyringS === null || spreadS === null || coefficientBandS === null) {
    return (
      <text className="no-figure" x={at} y={bottom - 6} textAnchor="middle">
        no figure
      </text>
    );
  }
  const { outsideS } = verdictOf(
    band,
    JUDGED_BY.map((id) => band.methods[id]),
  );
  const [shortest, longest] = [y(spreadS[0]), Math.max(top, y(spreadS[1]))];
  const runsOut = y(spreadS[1]) < top;
  const [least, most] = [y(coefficientBandS[0]), Math.max(top, y(coefficientBandS[1]))];
  const beside = band.methods[second];
  const label = labelPlace(eyringS, props.neighbours);
  return (
    <>
      <rect
        className="coefficients"
        x={at - 4.5}
        width={9}
        y={most}
        height={Math.max(0, least - most)}
      />
      <path
        className="whisker"
        d={`M${at},${shortest} V${longest} M${at - 5},${shortest} h10 ${
          runsOut ? `M${at - 4},${longest + 5} l4,-5 l4,5` : `M${at - 5},${longest} h10`
        }`}
      />
      {second === 'arauPuchades' && beside !== null ? (
        <path
          className="second-point"
          d={`M${at},${y(beside) - 4.5} l4.5,4.5 l-4.5,4.5 l-4.5,-4.5 z`}
        />
      ) : null}
      {outsideS !== 0 ? (
        <path className="point outside" d={`M${at},${y(eyringS) - 6} l6,10 h-12 z`} />
      ) : (
        <circle className="point" cx={at} cy={y(eyringS)} r={4} />
      )}
      <text
        className="point-label"
        x={at + label.dx}
        y={y(eyringS) + label.dy}
        textAnchor={label.anchor}
      >
        {eyringS.toFixed(2)}
      </text>
    </>
  );
}

/** Every figure of the octave, for the pointer. */
function told(band: DecayBand): string {
  return METHOD_IDS.map(
    (id) => `${METHODS[id].name}: ${band.methods[id]?.toFixed(2) ?? 'no figure'} s`,
  ).join('\n');
}

/** Where the figure stands clear of the line: under it on the outer side of a slope, over a peak. */
function labelPlace(
  time: number,
  [before, after]: DecayBandMarkProps['neighbours'],
): { readonly dx: number; readonly dy: number; readonly anchor: 'start' | 'end' } {
  const rises = after !== null && after > time;
  const fell = before !== null && before > time;
  if (!rises && fell) return { dx: -8, dy: 13, anchor: 'end' };
  if (!rises && before !== null && before < time) return { dx: 8, dy: -5, anchor: 'start' };
  return { dx: 8, dy: 13, anchor: 'start' };
}
