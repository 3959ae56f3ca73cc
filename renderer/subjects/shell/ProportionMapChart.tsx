/**
 * The map of proportions at the present ceiling height: shade is unevenness, the frame is what the bay
 * allows, the ring is the room. Drag the ring and the room follows.
 */

import { scaleLinear } from 'd3-scale';
import { useRef, useState, type KeyboardEvent, type PointerEvent, type ReactElement } from 'react';
import { bayOf } from '../../../core/proportions/bay';
import { MAP_RANGE } from '../../../core/proportions/map';
import { snapLength } from '../../../core/quantity/carpenter-step';
import type { Bay, ShellSize } from '../../../core/room/project';
import { Chart } from '../../kit/chart/Chart';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { Failure } from '../../kit/controls/Failure';
import { useKeyGesture } from '../../kit/controls/use-key-gesture';
import type { Gesture } from '../../state/gesture';
import { useAnalysis, useProject, useSession } from '../../state/session';
import { BayFrame, MAP_MARGINS, MapAxes, PublishedMarks } from './map-frame';
import { MapShade } from './MapShade';
import { useProportionMap } from './use-proportion-map';
import { Term } from '../../glossary/Term';

export function ProportionMapChart(): ReactElement {
  const project = useProject();
  const { modes } = useAnalysis();
  const change = useSession((session) => session.change);
  const { size } = project.room;
  // A bay that nobody entered follows the room; during a drag it stands still, or it would run away.
  const [held, hold] = useState<Bay | null>(null);
  const units = useSession((session) => session.units);
  const bay = held ?? bayOf(project, units);
  const { map, progress, failed, retry } = useProportionMap();
  const { box, ...area } = usePlotArea(MAP_MARGINS);
  const { left, right, top, bottom } = area;
  const keys = useKeyGesture();
  const gesture = useRef<Gesture | null>(null);
  const x = scaleLinear(MAP_RANGE.width, [left, right]);
  const y = scaleLinear(MAP_RANGE.length, [bottom, top]);
  const at = { x: x(size.width / size.height), y: y(size.length / size.height) };

  const moveTo = (width: number, length: number, as: Gesture): void =>
    change({ kind: 'size', size: buildable(size, width, length, bay) }, as);

  const onPointerMove = (event: PointerEvent<SVGSVGElement>): void => {
    if (gesture.current === null) return;
    const picture = event.currentTarget.getBoundingClientRect();
    const width = x.invert(event.clientX - picture.left) * size.height;
    const length = y.invert(event.clientY - picture.top) * size.height;
    moveTo(width, length, gesture.current);
  };

  const letGo = (): void => {
    gesture.current?.end();
    gesture.current = null;
    hold(null);
  };

  const onKeyDown = (event: KeyboardEvent): void => {
    const steps: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-1, 0],
      ArrowRight: [1, 0],
      ArrowDown: [0, -1],
      ArrowUp: [0, 1],
    };
    const step = steps[event.key];
    if (!step) return;
    event.preventDefault();
    moveTo(size.width + step[0] * bay.stepM, size.length + step[1] * bay.stepM, keys.press());
  };

  return (
    <Chart
      title="Map of proportions"
      caption={
        <>
          <Term id="proportions">Map of proportions</Term>
          {failed ? <Failure sentence={failed} again="Try again" onAgain={retry} /> : null}
        </>
      }
      readout={
        progress === null
          ? `here ${(modes.spacing.unevenness.value ?? 0).toFixed(0)} Hz uneven`
          : `computing ${(100 * progress).toFixed(0)} %`
      }
      live
      box={box}
      boxClass="map-box"
    >
      {area.width > 0 ? (
        <MapShade map={map} left={left} top={top} width={right - left} height={bottom - top} />
      ) : null}
      <Plot
        area={area}
        x={x}
        y={y}
        role="group"
        describe="Width over height across, length over height up"
        pull={{
          onPointerDown: (event) => {
            gesture.current = useSession.getState().begin();
            hold(bay);
            event.currentTarget.setPointerCapture(event.pointerId);
            onPointerMove(event);
          },
          onPointerMove,
          onPointerUp: letGo,
          onPointerCancel: letGo,
        }}
      >
        <MapAxes across={x.ticks(Math.max(2, Math.floor(area.width / 55)))} up={y.ticks(5)} />
        <PublishedMarks />
        <BayFrame bay={bay} heightM={size.height} />
        <g
          className="map-room"
          tabIndex={0}
          role="slider"
          aria-label="Room on the map; arrow keys change width and length"
          aria-valuenow={Number((size.width / size.height).toFixed(2))}
          aria-valuetext={`width ${(size.width / size.height).toFixed(2)}, length ${(size.length / size.height).toFixed(2)} times the height`}
          onKeyDown={onKeyDown}
          onBlur={keys.end}
        >
          <circle cx={at.x} cy={at.y} r={13} fill="transparent" />
          <circle className="map-ring" cx={at.x} cy={at.y} r={7} />
          <circle className="map-dot" cx={at.x} cy={at.y} r={1.8} />
        </g>
      </Plot>
    </Chart>
  );
}

/** The size on the carpenter's step, its sides within the bay; fixed ones stay. */
function buildable(present: ShellSize, width: number, length: number, bay: Bay): ShellSize {
  const side = (name: 'width' | 'length', wanted: number): number =>
    bay.fixed.includes(name)
      ? present[name]
      : Math.min(Math.max(snapLength(wanted, bay.stepM), bay.least[name]), bay.largest[name]);
  return { ...present, width: side('width', width), length: side('length', length) };
}
