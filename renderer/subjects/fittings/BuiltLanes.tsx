/**
 * The modes of the plain shell above, those of the room as built below, and a line from each to what
 * became of it. A mode that is like none of the shell carries a ring. Choosing one paints it.
 */

import { scaleLinear } from 'd3-scale';
import { useState, type ReactElement } from 'react';
import type { RoomMode, NamedModes } from '../../../core/analysis/named-modes';
import { modeKind, type ModeOrder, type ShellMode } from '../../../core/modes/shell-modes';
import { builtMeant, usePainted, type Painted } from '../../pressure/painted';
import { AxialNames } from '../../kit/chart/AxialNames';
import { Chart } from '../../kit/chart/Chart';
import { builtModeName, modeName } from '../../kit/chart/mode-name';
import { Solving } from './Solving';
import { nearestAt } from '../../kit/chart/nearest';
import { Plot, type PlotPoint } from '../../kit/chart/Plot';
import { usePlot, usePlotArea } from '../../kit/chart/plot-area';
import { Ticks, tickCount } from '../../kit/chart/Ticks';
import { signed } from '../../kit/chart/signed';

const MARGINS = { left: 92, right: 20, top: 32, bottom: 24 };
/** Reach of the pointer, px. */
const REACH_PX = 10;

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
  const { box, ...area } = usePlotArea(MARGINS);
  const { left, right, top, bottom } = area;
  const [pointed, setPointed] = useState<Pointed | null>(null);
  const { painted, choose } = usePainted();
  const x = scaleLinear([0, limitHz], [left, right]);
  const lane = Math.max(10, (bottom - top) * 0.3);
  const shown = shell.filter((mode) => mode.frequencyHz <= limitHz);
  const modes = built?.modes ?? [];

  const pointedAt = (at: PlotPoint): Pointed | null => {
    const below = built !== null && at.y > (top + bottom) / 2;
    const nearest = <T extends { readonly frequencyHz: number }>(list: readonly T[]): T | null => {
      const hz = list.map(({ frequencyHz }) => frequencyHz);
      return list[nearestAt(hz, x, at.x, REACH_PX) ?? -1] ?? null;
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
    <Chart
      className="built-lanes"
      title="Modes as built"
      caption={
        <>
          Modes as built
          <Solving />
        </>
      }
      readout={
        pointed?.text ??
        (built
          ? `${modes.length} to ${built.shape.limitHz} Hz, each within ${built.errorPercent.toFixed(2)} %`
          : `${shown.length} of the plain shell`)
      }
      live
      box={box}
    >
      <Plot
        area={area}
        x={x}
        y={(share) => top + share * (bottom - top)}
        describe={spoken(shown, built)}
        onPoint={(at) => setPointed(at && pointedAt(at))}
        onChoose={(at) => {
          const found = pointedAt(at);
          if (found) choose(found.painted);
        }}
        walk={{
          label: 'Modes as built, from the lowest',
          count: modes.length,
          at: walked === -1 ? null : walked,
          text: pointed?.text ?? '',
          onWalk: (at) => {
            const mode = modes[at];
            setPointed(mode ? pointedBuilt(mode) : null);
          },
          onLeave: () => setPointed(null),
          onChoose: (at) => {
            const mode = modes[at];
            if (mode) choose(pointedBuilt(mode).painted);
          },
        }}
      >
        <Ticks
          along="x"
          at={x.ticks(tickCount(right - left, limitHz / 20))}
          text={(hz) => (hz === limitHz ? `${hz} Hz` : hz)}
          offset={16}
        />
        {[top, bottom].map((y) => (
          <line key={y} className="axis" x1={left} x2={right} y1={y} y2={y} />
        ))}
        <text className="lane-label" x={left - 8} y={top + 16} textAnchor="end">
          <tspan className="lane-count">{shown.length}</tspan> shell
        </text>
        <text className="lane-label" x={left - 8} y={bottom - 6} textAnchor="end">
          <tspan className="lane-count">{built ? modes.length : '…'}</tspan> as built
        </text>
        {shown.map(({ order, frequencyHz, kind }) => (
          <line
            key={order.join()}
            className={`mode mode-${kind}${isChosen(order) ? ' chosen' : isPointed('shell', frequencyHz)}`}
            x1={x(frequencyHz)}
            x2={x(frequencyHz)}
            y1={top}
            y2={top + lane * TALL[kind]}
          />
        ))}
        <AxialNames modes={shown} rows={[top - 6, top - 18]} />
        {modes.map((mode, n) => (
          <BuiltMark
            key={n}
            mode={mode}
            lane={lane}
            marked={n === meant ? ' chosen' : isPointed('built', mode.frequencyHz)}
          />
        ))}
      </Plot>
    </Chart>
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
  readonly lane: number;
  readonly marked: string;
}): ReactElement {
  const { mode, lane, marked } = props;
  const { x, top, bottom } = usePlot();
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
