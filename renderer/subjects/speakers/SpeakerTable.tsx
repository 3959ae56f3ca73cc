/** Angle, distance, delay and level of each loudspeaker, to read and to type into a receiver. */

import type { ReactElement } from 'react';
import type { Finding } from '../../../core/findings/finding';
import type { LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import type { SpeakerResult } from '../../../core/speakers/judge';
import type { Layout } from '../../../core/speakers/layouts';
import { scrollable } from '../../kit/controls/scrollable';
import { Term } from '../../glossary/Term';
import { speakerSign } from '../../drawing/speaker-sign';

export interface SpeakerTableProps {
  readonly layout: Layout | null;
  readonly speakers: readonly SpeakerResult[];
  readonly findings: readonly Finding[];
  readonly units: LengthUnits;
  readonly chosen: string | null;
  readonly onChoose: (channel: string) => void;
}

export function SpeakerTable(props: SpeakerTableProps): ReactElement {
  const { layout, speakers, findings, units, chosen, onChoose } = props;
  return (
    <figure className="chart speaker-figures" aria-label="Loudspeaker figures">
      <figcaption>
        Angles, distance, delay and level
        <span className="readout">{layout?.source}</span>
      </figcaption>
      <div className="table-box" {...scrollable('Angles, distance, delay and level')}>
        <table>
          <thead>
            <tr>
              <th scope="col">channel</th>
              <th scope="col">
                <Term id="azimuth">angle to the side</Term>
              </th>
              <th scope="col" className="wide-cell">
                <Term id="window">allowed (window)</Term>
              </th>
              <th scope="col" className="wide-cell">
                <Term id="elevation">height angle</Term>
              </th>
              <th scope="col">distance</th>
              <th scope="col">
                <Term id="delay">delay</Term>
              </th>
              <th scope="col">level</th>
            </tr>
          </thead>
          <tbody>
            {speakers.map((speaker) => {
              const channel = layout?.channels.find((known) => known.label === speaker.channel);
              const [from, to] = channel?.azimuth ?? [0, 0];
              return (
                <tr
                  key={speaker.channel}
                  className={speaker.channel === chosen ? 'chosen' : undefined}
                  onClick={() => onChoose(speaker.channel)}
                >
                  <th scope="row">
                    <button type="button" onClick={() => onChoose(speaker.channel)}>
                      {speakerSign(speaker, findings) ?? '●'} {channel?.short ?? speaker.channel}
                    </button>
                  </th>
                  <td>{speaker.azimuthDeg.toFixed(1)}°</td>
                  <td className="wide-cell">
                    {channel ? (from === to ? `${from}°` : `${from} to ${to}°`) : 'none'}
                  </td>
                  <td className="wide-cell">{speaker.elevationDeg.toFixed(1)}°</td>
                  <td>{measuresIn(units).rounded(speaker.distanceM)}</td>
                  <td>{speaker.delayMs.toFixed(2)} ms</td>
                  <td>{speaker.levelDb.toFixed(1)} dB</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
    </figure>
  );
}
