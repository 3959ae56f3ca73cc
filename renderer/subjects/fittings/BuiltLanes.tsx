/**
 * The modes of the plain shell above, those of the room as built below, and a line from each to what
 * became of it. A mode that is like none of the shell carries a ring. Choosing one paints it.
 */

import { scaleLinear } from 'd3-scale';
import { useState, type MouseEvent, type ReactElement } from 'react';
import type { RoomMode, NamedModes } from '../../../core/analysis/named-modes';
import { modeKind, type ModeOrder, type ShellMode } from '../../../core/modes/shell-modes';
import { builtMeant, usePainted, type Painted } from '../../pressure/painted';
import { AxialNames } from '../../kit/chart/AxialNames';
import { ChartWalker } from '../../kit/chart/ChartWalker';
import { builtModeName, modeName } from '../../kit/chart/mode-name';
import { Solving } from './Solving';
import { tickCount } from '../../kit/chart/tick-count';
import { useBoxSize } from '../../kit/chart/use-box-size';
import { signed } from '../../kit/chart/signed';

const LEFT = 92;
const RIGHT = 20;
const TOP = 32;
const BOTTOM = 24;
/** Reach of the pointer, px. */
const REACH = 10;

export interface BuiltLanesProps {
  readonly shell: readonly ShellMode[];
  /** Null until they are solved. */
  readonly built: NamedModes | null;
  readonly limitHz: number;
}

interface Pointed {
  readonly painted: Extract<Painted, { kind: 'mode' }>;
  readonly text: string;
}

export function BuiltLanes({ shell, built, limitHz }: BuiltLanesProps): ReactElement {
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const [pointed, setPointed] = useState<Pointed | null>(null);
  const { painted, choose } = usePainted();
  const x = scaleLinear([0, limitHz], [LEFT, Math.max(LEFT + 10, width - RIGHT)]);
  const axis = height - BOTTOM;
  const lane = Math.max(10, (axis - TOP) * 0.3);
  const shown = shell.filter((mode) => mode.frequencyHz <= limitHz);
  const modes = built?.modes ?? [];

  const point = (px: number, py: number): Pointed | null => {
    const below = built !== null && py > (TOP + axis) / 2;
    const nearest = <T extends { readonly frequencyHz: number }>(list: readonly T[]): T | null => {
      let best: T | null = null;
      for (const mode of list) {
        const off = Math.abs(x(mode.frequencyHz) - px);
        if (off < REACH && off < Math.abs(x(best?.frequencyHz ?? 1e6) - px)) best = mode;
      }
      return best;
    };
    const mode = below ? nearest(modes) : null;
    if (mode) return pointedBuilt(mode);
    const plain = below ? null : nearest(shown);
    if (!plain) return null;
    const { frequencyHz, order, kind } = plain;
    return {
      painted: { kind: 'mode', of: 'shell', frequencyHz, order },
      text: `plain shell ${frequencyHz.toFixed(1)} Hz  ${modeName(order)}  ${kind}`,
    };
  };
  const pointedAt = (event: MouseEvent<SVGSVGElement>): Pointed | null => {
    const box = event.currentTarget.getBoundingClientRect();
    return point(event.clientX - box.left, event.clientY - box.top);
  };
  const walked =
    pointed?.painted.of === 'built'
      ? modes.findIndex(({ frequencyHz }) => frequencyHz === pointed.painted.frequencyHz)
      : -1;
  const meant = builtMeant(painted, modes);
  const isPointed = (of: 'shell' | 'built', frequencyHz: number): string =>
    pointed?.painted.of === of && pointed.painted.frequencyHz === frequencyHz ? ' pointed' : '';
  const isChosen = (order: ModeOrder): boolean =>
    painted?.kind === 'mode' && painted.of === 'shell' && painted.order?.join() === order.join();

  return (
    <figure className="chart built-lanes" aria-label="Modes as built">
      <figcaption>
        Modes as built
        <Solving />
        <span className="readout" aria-live="polite">
          {pointed?.text ??
            (built
              ? `${modes.length} to ${built.shape.limitHz} Hz, each within ${built.errorPercent.toFixed(2)} %`
              : `${shown.length} of the plain shell`)}
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="img"
            aria-label={spoken(shown, built)}
            onPointerMove={(event) => setPointed(pointedAt(event))}
            onPointerLeave={() => setPointed(null)}
            onClick={(event) => {
              const found = pointedAt(event);
              if (found) choose(found.painted);
            }}
          >
            {x.ticks(tickCount(width - LEFT - RIGHT, limitHz / 20)).map((hz) => (
              <g key={hz}>
                <line className="grid" x1={x(hz)} x2={x(hz)} y1={TOP} y2={axis} />
                <text className="tick-label" x={x(hz)} y={height - 8} textAnchor="middle">
                  {hz === limitHz ? `${hz} Hz` : hz}
                </text>
              </g>
            ))}
            {[TOP, axis].map((y) => (
              <line key={y} className="axis" x1={LEFT} x2={width - RIGHT} y1={y} y2={y} />
            ))}
            <text className="lane-label" x={LEFT - 8} y={TOP + 16} textAnchor="end">
              <tspan className="lane-count">{shown.length}</tspan> shell
            </text>
            <text className="lane-label" x={LEFT - 8} y={axis - 6} textAnchor="end">
              <tspan className="lane-count">{built ? modes.length : '…'}</tspan> as built
            </text>
            {shown.map(({ order, frequencyHz, kind }) => (
              <line
                key={order.join()}
                className={`mode mode-${kind}${isChosen(order) ? ' chosen' : isPointed('shell', frequencyHz)}`}
                x1={x(frequencyHz)}
                x2={x(frequencyHz)}
                y1={TOP}
                y2={TOP + lane * TALL[kind]}
              />
            ))}
            <AxialNames modes={shown} x={x} rows={[TOP - 6, TOP - 18]} />
            {modes.map((mode, n) => (
              <BuiltMark
                key={n}
                mode={mode}
                x={x}
                top={TOP}
                bottom={axis}
                lane={lane}
                marked={n === meant ? ' chosen' : isPointed('built', mode.frequencyHz)}
              />
            ))}
          </svg>
        ) : null}
        <ChartWalker
          label="Modes as built, from the lowest"
          count={modes.length}
          at={walked === -1 ? null : walked}
          text={pointed?.text ?? ''}
          onWalk={(at) => {
            const mode = modes[at];
            setPointed(mode ? pointedBuilt(mode) : null);
          }}
          onLeave={() => setPointed(null)}
          onChoose={(at) => {
            const mode = modes[at];
            if (mode) choose(pointedBuilt(mode).painted);
          }}
        />
      </div>
    </figure>
  );
}

function pointedBuilt(mode: RoomMode): Pointed {
  const { frequencyHz, likeShell } = mode;
  return {
    painted: { kind: 'mode', of: 'built', frequencyHz, order: likeShell },
    text: builtText(mode),
  };
}

const TALL = { axial: 1, tangential: 0.75, oblique: 0.5 } as const;

function BuiltMark(props: {
  readonly mode: RoomMode;
  readonly x: (hz: number) => number;
  readonly top: number;
  readonly bottom: number;
  readonly lane: number;
  readonly marked: string;
}): ReactElement {
  const { mode, x, top, bottom, lane, marked } = props;
  const { likeShell, frequencyHz, shiftHz } = mode;
  const at = x(frequencyHz);
  const kind = likeShell ? modeKind(likeShell) : 'tangential';
  const tall = lane * TALL[kind];
  return (
    <g className={`${likeShell ? '' : 'mixed'}${marked}`}>
      <line className={`mode mode-${kind}`} x1={at} x2={at} y1={bottom - tall} y2={bottom} />
      {likeShell && shiftHz !== null ? (
        <line
          className={`shift-line ${kind}`}
          x1={x(frequencyHz - shiftHz)}
          x2={at}
          y1={top + tall}
          y2={bottom - tall}
        />
      ) : (
        <path className="free-mode" d={`M${at - 3},${bottom - tall - 3} l6,6 m0,-6 l-6,6`} />
      )}
    </g>
  );
}

function builtText(mode: RoomMode): string {
  const shift = mode.shiftHz === null ? '' : `  ${signed(mode.shiftHz)} Hz against the shell`;
  return `as built ${mode.frequencyHz.toFixed(1)} Hz  ${builtModeName(mode)}${shift}  ±${mode.errorPercent.toFixed(2)} %`;
}

function spoken(shell: readonly ShellMode[], built: NamedModes | null): string {
  if (!built) return `${shell.length} modes of the plain shell; those as built are not solved yet`;
  const mixed = built.modes.filter((mode) => mode.likeShell === null).length;
  return `${built.modes.length} modes as built, ${mixed} of them mixed, beside ${shell.length} of the plain shell`;
}
