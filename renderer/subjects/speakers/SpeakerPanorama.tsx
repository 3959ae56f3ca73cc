/**
 * What the listener hears from where, unrolled: angle to the side across (left is left), height angle up. Windows of
 * the layout are outlined, loudspeakers are marked; one outside its window has the sign of its finding.
 */

import { scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';
import type { Finding } from '../../../core/findings/finding';
import type { SpeakerResult } from '../../../core/speakers/judge';
import type { Layout } from '../../../core/speakers/layouts';
import { Term } from '../../glossary/Term';
import { severityOfPlace } from '../../drawing/speaker-sign';
import { heardNames } from './heard-names';
import { LegendEntry } from '../../kit/Figure';
import { Chart } from '../../kit/chart/Chart';
import { Plot } from '../../kit/chart/Plot';
import { usePlotArea } from '../../kit/chart/plot-area';
import { Ticks } from '../../kit/chart/Ticks';

const MARGINS = { left: 40, right: 14, top: 24, bottom: 38 };

export interface SpeakerPanoramaProps {
  readonly layout: Layout | null;
  readonly speakers: readonly SpeakerResult[];
  readonly findings: readonly Finding[];
  readonly chosen: string | null;
  readonly onChoose: (channel: string) => void;
}

export function SpeakerPanorama(props: SpeakerPanoramaProps): ReactElement {
  const { layout, speakers, findings, chosen, onChoose } = props;
  const { box, ...area } = usePlotArea(MARGINS);
  const { height, left, right, top, bottom } = area;
  const x = scaleLinear([180, -180], [left, right]);
  const heights = [
    ...speakers.map((speaker) => speaker.elevationDeg),
    ...(layout?.channels ?? []).flatMap((channel) => channel.elevation),
  ];
  const reach = Math.max(30, ...heights.map((elevation) => Math.abs(elevation) + 5));
  const y = scaleLinear([-reach, reach], [bottom, top]);
  const shortOf = (label: string): string =>
    layout?.channels.find((known) => known.label === label)?.short ?? label;
  const names = heardNames(
    speakers.map((speaker) => ({
      text: shortOf(speaker.channel),
      x: x(speaker.azimuthDeg),
      y: y(speaker.elevationDeg),
      below: speaker.elevationOffDeg < 0,
    })),
    [top, bottom],
  );
  const degrees = (angle: number): string => `${angle}°`;
  return (
    <Chart
      title="Loudspeakers as heard from the reference place"
      caption="From the reference place"
      legend={
        <LegendEntry mark="window">
          <Term id="window">allowed angles (window)</Term>
        </LegendEntry>
      }
      box={box}
    >
      <Plot
        area={area}
        x={x}
        y={y}
        role="group"
        describe="Angle to the side (azimuth) and height angle (elevation)"
      >
        <Ticks
          along="x"
          at={[180, 135, 90, 45, 0, -45, -90, -135, -180]}
          text={degrees}
          offset={16}
        />
        <text className="tick-label" x={(left + right) / 2} y={height - 6} textAnchor="middle">
          angle to the side (azimuth), screen at 0°
        </text>
        <text className="tick-label" x={left} y={12}>
          height angle (elevation)
        </text>
        <Ticks along="y" at={[-30, 0, 30]} text={degrees} axisAt={0} />
        {layout?.channels.map((channel) => {
          const [from, to] = channel.azimuth;
          const [low, high] = channel.elevation;
          return (
            <rect
              key={channel.label}
              className="window"
              x={x(to) - 4}
              width={x(from) - x(to) + 8}
              y={y(high) - 5}
              height={y(low) - y(high) + 10}
              rx={2}
            />
          );
        })}
        {speakers.map((speaker, n) => {
          const at = x(speaker.azimuthDeg);
          const up = y(speaker.elevationDeg);
          return (
            <g
              key={speaker.channel}
              className={`heard${speaker.inRange ? '' : ' outside'}${speaker.channel === chosen ? ' chosen' : ''}`}
              onPointerDown={() => onChoose(speaker.channel)}
            >
              <rect x={at - 16} y={up - 26} width={32} height={38} fill="transparent" />
              {severityOfPlace(speaker, findings) === null ||
              severityOfPlace(speaker, findings) === 'note' ? (
                <circle cx={at} cy={up} r={5} />
              ) : (
                <path d={`M${at},${up - 7} l7,12 h-14 z`} />
              )}
              <text x={at} y={names[n] ?? up - 12} textAnchor="middle">
                {shortOf(speaker.channel)}
              </text>
            </g>
          );
        })}
      </Plot>
    </Chart>
  );
}
