/** Angle, distance, delay and level of each loudspeaker, to read and to type into a receiver. */

import type { ReactElement } from 'react';
import type { Finding } from '../../../core/findings/finding';
import type { LengthUnits } from '../../../core/quantity/length';
import { measuresIn } from '../../../core/quantity/measures';
import type { SpeakerResult } from '../../../core/speakers/judge';
import type { Layout } from '../../../core/speakers/layouts';
import { FactTable } from '../../kit/table/FactTable';
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
  const { rounded } = measuresIn(units);
  const channelOf = (label: string): Layout['channels'][number] | undefined =>
    layout?.channels.find((known) => known.label === label);
  return (
    <FactTable
      className="speaker-figures"
      title="Loudspeaker figures"
      caption="Angles, distance, delay and level"
      readout={layout?.source ?? ''}
      scrolls="Angles, distance, delay and level"
      rows={speakers}
      keyOf={({ channel }) => channel}
      chosen={chosen}
      onChoose={({ channel }) => onChoose(channel)}
      pressRow
      columns={[
        {
          key: 'channel',
          head: 'channel',
          cell: (speaker) =>
            `${speakerSign(speaker, findings) ?? '●'} ${channelOf(speaker.channel)?.short ?? speaker.channel}`,
        },
        {
          key: 'azimuth',
          head: <Term id="azimuth">angle to the side</Term>,
          cell: ({ azimuthDeg }) => `${azimuthDeg.toFixed(1)}°`,
        },
        {
          key: 'window',
          head: <Term id="window">allowed (window)</Term>,
          headClass: 'wide-cell',
          cell: ({ channel }) => {
            const [from, to] = channelOf(channel)?.azimuth ?? [null, null];
            if (from === null) return 'none';
            return from === to ? `${from}°` : `${from} to ${to}°`;
          },
          cellClass: () => 'wide-cell',
        },
        {
          key: 'elevation',
          head: <Term id="elevation">height angle</Term>,
          headClass: 'wide-cell',
          cell: ({ elevationDeg }) => `${elevationDeg.toFixed(1)}°`,
          cellClass: () => 'wide-cell',
        },
        { key: 'distance', head: 'distance', cell: ({ distanceM }) => rounded(distanceM) },
        {
          key: 'delay',
          head: <Term id="delay">delay</Term>,
          cell: ({ delayMs }) => `${delayMs.toFixed(2)} ms`,
        },
        { key: 'level', head: 'level', cell: ({ levelDb }) => `${levelDb.toFixed(1)} dB` },
      ]}
    />
  );
}
