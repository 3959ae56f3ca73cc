/** One octave of the decay chart: spread of the methods, error of the coefficients, the time itself. */

import type { ReactElement } from 'react';
import type { DecayBand } from '../../../core/decay/decay';
import { JUDGED_BY, verdictOf } from '../../../core/decay/verdict';
import { METHOD_IDS, METHODS, type MethodId } from '../../../core/decay/methods';
import { usePlot, type Scale } from '../../kit/chart/plot-area';
import { spreadLabels, textWidthPx, type LabelPlace } from '../../kit/chart/spread-labels';
import { bandMark } from '../../../core/quantity/bands';

export interface DecayBandMarkProps {
  readonly band: DecayBand;
  /** The method drawn beside Eyring. */
  readonly second: MethodId;
  readonly chosen: boolean;
  readonly onChoose: () => void;
  /** Where Eyring's time stands as a figure; null where there is no place for it. */
  readonly figureAt: LabelPlace | null;
}

export function DecayBandMark(props: DecayBandMarkProps): ReactElement {
  const { band, chosen, onChoose } = props;
  const { x, top, bottom } = usePlot();
  const at = x(band.hz);
  return (
    <g className="band-mark" onPointerDown={onChoose}>
      <rect x={at - 18} y={top} width={36} height={bottom - top} fill="transparent">
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

function Times({ band, second, figureAt }: DecayBandMarkProps): ReactElement {
  const { x, y, top, bottom } = usePlot();
  const at = x(band.hz);
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
      {figureAt ? (
        <text
          className="point-label"
          x={figureAt.x}
          y={figureAt.y}
          textAnchor={figureAt.anchor ?? 'middle'}
        >
          {eyringS.toFixed(2)}
        </text>
      ) : null}
    </>
  );
}

/** Every figure of the octave, for the pointer. */
function told(band: DecayBand): string {
  return METHOD_IDS.map(
    (id) => `${METHODS[id].name}: ${band.methods[id]?.toFixed(2) ?? 'no figure'} s`,
  ).join('\n');
}

/** From the point to its figure: beside it, and under or over it, px. */
const BESIDE_PX = 8;
const UNDER_PX = 13;
const OVER_PX = -5;

/**
 * Places of Eyring's times as figures, octave by octave: each stands clear of the line, under it on the
 * outer side of a slope, over a peak, and none over another.
 */
export function figurePlaces(
  bands: readonly DecayBand[],
  x: Scale,
  y: Scale,
  { width, height }: { readonly width: number; readonly height: number },
): readonly (LabelPlace | null)[] {
  const figures = bands.map(({ hz, eyringS }, n) => {
    if (eyringS === null) return { width: 0, places: [] };
    const at = (side: 'start' | 'end', dy: number): LabelPlace => ({
      x: x(hz) + (side === 'start' ? BESIDE_PX : -BESIDE_PX),
      y: y(eyringS) + dy,
      anchor: side,
    });
    const [before, after] = [bands[n - 1]?.eyringS ?? null, bands[n + 1]?.eyringS ?? null];
    const rises = after !== null && after > eyringS;
    const wanted =
      rises || before === null || before === eyringS
        ? at('start', UNDER_PX)
        : before > eyringS
          ? at('end', UNDER_PX)
          : at('start', OVER_PX);
    const places = [wanted, at('start', UNDER_PX), at('end', UNDER_PX), at('start', OVER_PX)];
    return { width: textWidthPx(eyringS.toFixed(2)), places };
  });
  return spreadLabels(figures, { within: { left: 0, right: width, top: 0, bottom: height } });
}
