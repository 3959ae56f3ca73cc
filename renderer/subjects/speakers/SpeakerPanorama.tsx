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
import { useBoxSize } from '../../kit/chart/use-box-size';

const LEFT = 40;
const RIGHT = 14;
const TOP = 24;
const BOTTOM = 38;

export interface SpeakerPanoramaProps {
  readonly layout: Layout | null;
  readonly speakers: readonly SpeakerResult[];
  readonly findings: readonly Finding[];
  readonly chosen: string | null;
  readonly onChoose: (channel: string) => void;
}

export function SpeakerPanorama(props: SpeakerPanoramaProps): ReactElement {
  const { layout, speakers, findings, chosen, onChoose } = props;
  const [ref, { width, height }] = useBoxSize<HTMLDivElement>();
  const x = scaleLinear([180, -180], [LEFT, Math.max(LEFT + 10, width - RIGHT)]);
  const heights = [
    ...speakers.map((speaker) => speaker.elevationDeg),
    ...(layout?.channels ?? []).flatMap((channel) => channel.elevation),
  ];
  const reach = Math.max(30, ...heights.map((elevation) => Math.abs(elevation) + 5));
  const y = scaleLinear([-reach, reach], [height - BOTTOM, TOP]);
  const shortOf = (label: string): string =>
    layout?.channels.find((known) => known.label === label)?.short ?? label;
  const names = heardNames(
    speakers.map((speaker) => ({
      text: shortOf(speaker.channel),
      x: x(speaker.azimuthDeg),
      y: y(speaker.elevationDeg),
      below: speaker.elevationOffDeg < 0,
    })),
    [TOP, height - BOTTOM],
  );
  return (
    <figure className="chart" aria-label="Loudspeakers as heard from the reference place">
      <figcaption>
        From the reference place
        <span className="key">
          <span>
            <i className="swatch window" />
            <Term id="window">allowed angles (window)</Term>
          </span>
        </span>
      </figcaption>
      <div ref={ref} className="chart-box">
        {width > 0 ? (
          <svg
            width={width}
            height={height}
            role="group"
            aria-label="Angle to the side (azimuth) and height angle (elevation)"
          >
            {[180, 135, 90, 45, 0, -45, -90, -135, -180].map((azimuth) => (
              <g key={azimuth}>
                <line
                  className="grid"
                  x1={x(azimuth)}
                  x2={x(azimuth)}
                  y1={TOP}
                  y2={height - BOTTOM}
                />
                <text className="tick-label" x={x(azimuth)} y={height - 22} textAnchor="middle">
                  {azimuth}°
                </text>
              </g>
            ))}
            <text
              className="tick-label"
              x={(LEFT + width - RIGHT) / 2}
              y={height - 6}
              textAnchor="middle"
            >
              angle to the side (azimuth), screen at 0°
            </text>
            <text className="tick-label" x={LEFT} y={12}>
              height angle (elevation)
            </text>
            {[-30, 0, 30].map((elevation) => (
              <g key={elevation}>
                <line
                  className={elevation === 0 ? 'axis' : 'grid'}
                  x1={LEFT}
                  x2={width - RIGHT}
                  y1={y(elevation)}
                  y2={y(elevation)}
                />
                <text className="tick-label" x={LEFT - 6} y={y(elevation) + 4} textAnchor="end">
                  {elevation}°
                </text>
              </g>
            ))}
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
          </svg>
        ) : null}
      </div>
    </figure>
  );
}
