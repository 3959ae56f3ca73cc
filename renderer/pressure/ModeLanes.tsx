/**
 * Modes to 200 Hz in three lanes. Axial modes are named; a pile-up is bracketed, a gap is hatched, and
 * the Schroeder frequency stands across all lanes (or at the edge, where it lies above).
 */

import { scaleLinear } from 'd3-scale';
import { useState, type ReactElement } from 'react';
import type { ModesResult } from '../../core/analysis/analyze';
import type { ModeKind, ShellMode } from '../../core/modes/shell-modes';
import { usePainted, type Painted } from './painted';
import { AxialNames } from '../kit/chart/AxialNames';
import { Chart } from '../kit/chart/Chart';
import { NamedLine } from '../kit/chart/Cursor';
import { Hatch, useHatch } from '../kit/chart/Hatch';
import { modeName } from '../kit/chart/mode-name';
import { nearestAt } from '../kit/chart/nearest';
import { Plot, type PlotPoint } from '../kit/chart/Plot';
import { usePlot, usePlotArea } from '../kit/chart/plot-area';
import { Ticks, tickCount } from '../kit/chart/Ticks';
import { Term } from '../glossary/Term';

const MARGINS = { left: 104, right: 16, top: 20, bottom: 24 };
/** Reach of the pointer, px. */
const REACH_PX = 12;
const LANES: readonly { readonly kind: ModeKind; readonly share: number }[] = [
  { kind: 'axial', share: 0.5 },
  { kind: 'tangential', share: 0.26 },
  { kind: 'oblique', share: 0.24 },
];

export interface ModeLanesProps {
  readonly modes: ModesResult;
  /** Span that the chosen finding speaks of. */
  readonly marked: { readonly fromHz: number; readonly toHz: number } | null;
}

export function ModeLanes({ modes, marked }: ModeLanesProps): ReactElement {
  const { box, ...area } = usePlotArea(MARGINS);
  const { left, right, top, bottom } = area;
  const [pointed, setPointed] = useState<ShellMode | null>(null);
  const { painted, choose } = usePainted();
  const hatch = useHatch();
  const x = scaleLinear([0, 200], [left, right]);
  let y = top;
  const lanes = LANES.map((lane) => {
    const from = y;
    y += (bottom - top) * lane.share;
    return { ...lane, top: from, bottom: y };
  });
  const axial = lanes[0];
  const counts = (kind: ModeKind): number =>
    modes.shell.filter((mode) => mode.kind === kind).length;

  const pointedAt = (at: PlotPoint): ShellMode | null => {
    const lane = lanes.find((candidate) => at.y >= candidate.top && at.y < candidate.bottom);
    const modesThere = lane ? modes.shell.filter(({ kind }) => kind === lane.kind) : modes.shell;
    const hz = modesThere.map(({ frequencyHz }) => frequencyHz);
    return modesThere[nearestAt(hz, x, at.x, REACH_PX) ?? -1] ?? null;
  };

  const paint = ({ frequencyHz, order }: ShellMode): void =>
    choose({ kind: 'mode', of: 'shell', frequencyHz, order });
  const walked = pointed === null ? -1 : modes.shell.indexOf(pointed);

  return (
    <Chart
      title="Modes of the room to 200 Hz"
      caption={
        <span>
          <Term id="mode">Resonances (modes) to 200 Hz</Term>
          <span className="caption-terms">
            {LANES.map(({ kind }) => (
              <Term key={kind} id={kind}>
                {kind}
              </Term>
            ))}
            <Term id="gap">gap</Term>
            <Term id="pileUp">pile-up</Term>
            <Term id="schroeder">Schroeder</Term>
          </span>
        </span>
      }
      readout={
        pointed
          ? readout(pointed)
          : `${modes.shell.length} modes${modes.exactShape ? '' : ' of the plain shell'}`
      }
      live
      box={box}
    >
      {axial ? (
        <Plot
          area={area}
          x={x}
          y={(share) => top + share * (bottom - top)}
          describe={`${counts('axial')} axial, ${counts('tangential')} tangential and ${counts('oblique')} oblique modes; ${modes.gaps.length} gaps and ${modes.pileUps.length} pile-ups of axial modes`}
          onPoint={(at) => setPointed(at && pointedAt(at))}
          onChoose={(at) => {
            const found = pointedAt(at);
            if (found) paint(found);
          }}
          walk={{
            label: 'Modes from the lowest',
            count: modes.shell.length,
            at: walked === -1 ? null : walked,
            text: pointed ? readout(pointed) : '',
            onWalk: (at) => setPointed(modes.shell[at] ?? null),
            onLeave: () => setPointed(null),
            onChoose: (at) => {
              const mode = modes.shell[at];
              if (mode) paint(mode);
            },
          }}
        >
          <Hatch id={hatch.id} ink="accent" />
          {marked ? (
            <rect
              className="marked-span"
              x={x(Math.min(marked.fromHz, 200)) - 4}
              width={x(Math.min(marked.toHz, 200)) - x(Math.min(marked.fromHz, 200)) + 8}
              y={top}
              height={bottom - top}
            />
          ) : null}
          <Ticks
            along="x"
            at={x.ticks(tickCount(right - left, 10))}
            text={(hz) => (hz === 200 ? '200 Hz' : hz)}
            offset={16}
          />
          {lanes.map((lane) => (
            <g key={lane.kind}>
              <line className="axis" x1={left} x2={right} y1={lane.bottom} y2={lane.bottom} />
              <text className="lane-label" x={left - 10} y={lane.bottom - 5} textAnchor="end">
                <tspan className="lane-count">{counts(lane.kind)}</tspan> {lane.kind}
              </text>
            </g>
          ))}
          {modes.gaps.map((gap) => {
            const end = Math.min(gap.toHz, 200);
            const middle = (x(gap.fromHz) + x(end)) / 2;
            const wide = x(end) - x(gap.fromHz) > 50;
            return (
              <g key={gap.fromHz} className="gap">
                <rect
                  fill={hatch.fill}
                  x={x(gap.fromHz)}
                  width={Math.max(0, x(end) - x(gap.fromHz))}
                  y={axial.bottom - 26}
                  height={26}
                />
                {wide ? (
                  <text className="mark-label" x={middle} y={axial.bottom - 32} textAnchor="middle">
                    gap {gap.widthHz.toFixed(0)} Hz
                  </text>
                ) : null}
              </g>
            );
          })}
          {modes.shell.map((mode) => {
            const lane = lanes.find((candidate) => candidate.kind === mode.kind);
            if (!lane) return null;
            const tall = mode.kind === 'axial' ? 26 : (lane.bottom - lane.top) * 0.62;
            const at = x(mode.frequencyHz);
            return (
              <line
                key={mode.order.join()}
                className={`mode mode-${mode.kind}${mode === pointed || isChosen(mode, painted) ? ' pointed' : ''}`}
                x1={at}
                x2={at}
                y1={lane.bottom - tall}
                y2={lane.bottom}
              />
            );
          })}
          <AxialNames
            modes={modes.shell}
            rows={[axial.bottom - 46, axial.bottom - 59].filter((row) => row >= axial.top)}
          />
          {modes.pileUps.map((pileUp) => {
            const [from, to] = [x(pileUp.lowHz) - 3, x(pileUp.highHz) + 3];
            const above = axial.bottom - 31;
            return (
              <g key={pileUp.lowHz} className="pile-up">
                <path d={`M${from},${axial.bottom} V${above} H${to} V${axial.bottom}`} />
                <title>{`${pileUp.modes.map((mode) => modeName(mode.order)).join(', ')} within ${(pileUp.highHz - pileUp.lowHz).toFixed(1)} Hz`}</title>
              </g>
            );
          })}
          <SchroederLine schroederHz={modes.schroederHz} />
        </Plot>
      ) : null}
    </Chart>
  );
}

const readout = ({ frequencyHz, order, kind }: ShellMode): string =>
  `${frequencyHz.toFixed(1)} Hz  ${modeName(order)}  ${kind}`;

const isChosen = (mode: ShellMode, painted: Painted | null): boolean =>
  painted?.kind === 'mode' && painted.of === 'shell' && painted.order?.join() === mode.order.join();

/** At its frequency, or at the edge with an arrow where it lies above the chart. */
function SchroederLine(props: { readonly schroederHz: number | null }): ReactElement | null {
  const { schroederHz } = props;
  const { right } = usePlot();
  if (schroederHz === null) return null;
  const text = `Schroeder frequency ${schroederHz.toFixed(0)} Hz`;
  return schroederHz > 200 ? (
    <text className="plot-note" x={right} y={13} textAnchor="end">
      {text} →
    </text>
  ) : (
    <NamedLine at={schroederHz} text={text} side={schroederHz > 140 ? 'left' : 'right'} above={4} />
  );
}
