/**
 * Modes to 200 Hz in three lanes. Axial modes are named; a pile-up is bracketed, a gap is hatched, and
 * the Schroeder frequency stands across all lanes (or at the edge, where it lies above).
 */

import { scaleLinear } from 'd3-scale';
import { useState, type MouseEvent, type ReactElement } from 'react';
import type { ModesResult } from '../../core/analysis/analyze';
import type { ModeKind, ShellMode } from '../../core/modes/shell-modes';
import { usePainted, type Painted } from './painted';
import { AxialNames } from '../kit/chart/AxialNames';
import { ChartWalker } from '../kit/chart/ChartWalker';
import { modeName } from '../kit/chart/mode-name';
import { tickCount } from '../kit/chart/tick-count';
import { useBoxSize } from '../kit/chart/use-box-size';
import { Term } from '../glossary/Term';

const LEFT = 104;
const RIGHT = 16;
const TOP = 20;
const BOTTOM = 24;
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
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const [pointed, setPointed] = useState<ShellMode | null>(null);
  const { painted, choose } = usePainted();
  const x = scaleLinear([0, 200], [LEFT, Math.max(LEFT + 10, width - RIGHT)]);
  const inner = height - TOP - BOTTOM;
  let y = TOP;
  const lanes = LANES.map((lane) => {
    const top = y;
    y += inner * lane.share;
    return { ...lane, top, bottom: y };
  });
  const axial = lanes[0];
  const counts = (kind: ModeKind): number =>
    modes.shell.filter((mode) => mode.kind === kind).length;

  const pointedAt = (event: MouseEvent<SVGSVGElement>): ShellMode | null => {
    const box = event.currentTarget.getBoundingClientRect();
    const [px, py] = [event.clientX - box.left, event.clientY - box.top];
    const lane = lanes.find((candidate) => py >= candidate.top && py < candidate.bottom);
    let best: ShellMode | null = null;
    for (const mode of modes.shell) {
      if (lane && mode.kind !== lane.kind) continue;
      const off = Math.abs(x(mode.frequencyHz) - px);
      if (off < 12 && off < Math.abs(x(best?.frequencyHz ?? 1e6) - px)) best = mode;
    }
    return best;
  };

  const paint = ({ frequencyHz, order }: ShellMode): void =>
    choose({ kind: 'mode', of: 'shell', frequencyHz, order });
  const walked = pointed === null ? -1 : modes.shell.indexOf(pointed);

  return (
    <figure className="chart" aria-label="Modes of the room to 200 Hz">
      <figcaption>
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
        <span className="readout" aria-live="polite">
          {pointed
            ? readout(pointed)
            : `${modes.shell.length} modes${modes.exactShape ? '' : ' of the plain shell'}`}
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 && axial ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={`${counts('axial')} axial, ${counts('tangential')} tangential and ${counts('oblique')} oblique modes; ${modes.gaps.length} gaps and ${modes.pileUps.length} pile-ups of axial modes`}
            onPointerMove={(event) => setPointed(pointedAt(event))}
            onPointerLeave={() => setPointed(null)}
            onClick={(event) => {
              const found = pointedAt(event);
              if (found) paint(found);
            }}
          >
            <defs>
              <pattern id="gap-hatch" width="7" height="7" patternUnits="userSpaceOnUse">
                <path className="hatch-accent" d="M-1,8 L8,-1 M-1,1 L1,-1 M6,8 L8,6" />
              </pattern>
            </defs>
            {marked ? (
              <rect
                className="marked-span"
                x={x(Math.min(marked.fromHz, 200)) - 4}
                width={x(Math.min(marked.toHz, 200)) - x(Math.min(marked.fromHz, 200)) + 8}
                y={TOP}
                height={inner}
              />
            ) : null}
            {x.ticks(tickCount(width - LEFT - RIGHT, 10)).map((hz) => (
              <g key={hz}>
                <line className="grid" x1={x(hz)} x2={x(hz)} y1={TOP} y2={height - BOTTOM} />
                <text className="tick-label" x={x(hz)} y={height - 8} textAnchor="middle">
                  {hz === 200 ? '200 Hz' : hz}
                </text>
              </g>
            ))}
            {lanes.map((lane) => (
              <g key={lane.kind}>
                <line
                  className="axis"
                  x1={LEFT}
                  x2={width - RIGHT}
                  y1={lane.bottom}
                  y2={lane.bottom}
                />
                <text className="lane-label" x={LEFT - 10} y={lane.bottom - 5} textAnchor="end">
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
                    fill="url(#gap-hatch)"
                    x={x(gap.fromHz)}
                    width={Math.max(0, x(end) - x(gap.fromHz))}
                    y={axial.bottom - 26}
                    height={26}
                  />
                  {wide ? (
                    <text
                      className="mark-label"
                      x={middle}
                      y={axial.bottom - 32}
                      textAnchor="middle"
                    >
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
              x={x}
              rows={[axial.bottom - 46, axial.bottom - 59].filter((row) => row >= axial.top)}
            />
            {modes.pileUps.map((pileUp) => {
              const [from, to] = [x(pileUp.lowHz) - 3, x(pileUp.highHz) + 3];
              const above = axial.bottom - 31;
              return (
                <g key={pileUp.lowHz} className="pile-up">
                  <path d={`M${from},${axial.bottom} V${above} H${to} V${axial.bottom}`} />
                  <title>
                    {pileUp.modes.map((mode) => modeName(mode.order)).join(', ')} within{' '}
                    {(pileUp.highHz - pileUp.lowHz).toFixed(1)} Hz
                  </title>
                </g>
              );
            })}
            <SchroederLine modes={modes} x={x} bottom={height - BOTTOM} right={width - RIGHT} />
          </svg>
        ) : null}
        <ChartWalker
          label="Modes from the lowest"
          count={modes.shell.length}
          at={walked === -1 ? null : walked}
          text={pointed ? readout(pointed) : ''}
          onWalk={(at) => setPointed(modes.shell[at] ?? null)}
          onLeave={() => setPointed(null)}
          onChoose={(at) => {
            const mode = modes.shell[at];
            if (mode) paint(mode);
          }}
        />
      </div>
    </figure>
  );
}

const readout = ({ frequencyHz, order, kind }: ShellMode): string =>
  `${frequencyHz.toFixed(1)} Hz  ${modeName(order)}  ${kind}`;

const isChosen = (mode: ShellMode, painted: Painted | null): boolean =>
  painted?.kind === 'mode' && painted.of === 'shell' && painted.order?.join() === mode.order.join();

interface SchroederLineProps {
  readonly modes: ModesResult;
  readonly x: (hz: number) => number;
  readonly bottom: number;
  readonly right: number;
}

function SchroederLine({ modes, x, bottom, right }: SchroederLineProps): ReactElement | null {
  const { schroederHz } = modes;
  if (schroederHz === null) return null;
  if (schroederHz > 200) {
    return (
      <text className="schroeder-label" x={right} y={13} textAnchor="end">
        Schroeder frequency {schroederHz.toFixed(0)} Hz →
      </text>
    );
  }
  const at = x(schroederHz);
  return (
    <g>
      <line className="schroeder" x1={at} x2={at} y1={TOP - 4} y2={bottom} />
      <text
        className="schroeder-label"
        x={at + (schroederHz > 140 ? -5 : 5)}
        y={13}
        textAnchor={schroederHz > 140 ? 'end' : 'start'}
      >
        Schroeder frequency {schroederHz.toFixed(0)} Hz
      </text>
    </g>
  );
}
