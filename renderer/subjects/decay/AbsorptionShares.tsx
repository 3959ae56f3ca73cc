/** Which surface, person or part of the air takes how much of the sound in the chosen octave. */

import type { ReactElement } from 'react';
import type { DecayBand } from '../../../core/decay/decay';
import { itemOf } from '../../../core/decay/objects';
import { bandName, OCTAVES_HZ } from '../../../core/quantity/bands';
import { faceName } from '../../../core/room/faces';
import { finishLookup, finishName } from '../../../core/room/finishes';
import { measuresIn, type Measures } from '../../../core/quantity/measures';
import type { Project } from '../../../core/room/project';
import { Figure } from '../../kit/Figure';
import { Note } from '../../kit/Note';
import { useSession } from '../../state/session';

export interface AbsorptionSharesProps {
  readonly band: DecayBand;
  readonly project: Project;
  readonly onChoose: (hz: DecayBand['hz']) => void;
}

export function AbsorptionShares({ band, project, onChoose }: AbsorptionSharesProps): ReactElement {
  const measures = useSession((session) => measuresIn(session.units));
  const rows = shares(band, project, measures);
  const total = rows.reduce((sum, row) => sum + (row.areaM2 ?? 0), 0);
  const most = Math.max(0.001, ...rows.map((row) => row.areaM2 ?? 0));
  return (
    <Figure
      title={`Absorption at ${band.hz} Hz`}
      caption={
        <label>
          <span>What absorbs at </span>
          <select
            className="in-caption"
            value={band.hz}
            onChange={(event) => {
              const hz = OCTAVES_HZ.find((known) => String(known) === event.currentTarget.value);
              if (hz !== undefined) onChoose(hz);
            }}
          >
            {OCTAVES_HZ.map((hz) => (
              <option key={hz} value={hz}>
                {bandName(hz)}
              </option>
            ))}
          </select>
        </label>
      }
      readout={
        <Note word={measures.area(total)} title="What the shares come from">
          {rows.map(({ key, what, source }) => (
            <span key={key}>
              <b>{what}</b> {source}
            </span>
          ))}
        </Note>
      }
    >
      <ol className="shares" tabIndex={0} aria-label="What absorbs">
        {rows.map((row) => (
          <li key={row.key}>
            <span className="share-what">
              {row.what}
              <small>{row.detail}</small>
            </span>
            <svg className="share-bar" height="8" preserveAspectRatio="none" viewBox="0 0 100 8">
              <rect width={((row.areaM2 ?? 0) / most) * 100} height="8" />
            </svg>
            <span className="share-figure">
              {row.areaM2 === null ? 'no figure' : measures.area(row.areaM2)}
            </span>
          </li>
        ))}
      </ol>
    </Figure>
  );
}

interface Share {
  readonly key: string;
  readonly what: string;
  readonly detail: string;
  /** Where its share comes from. */
  readonly source: string;
  readonly areaM2: number | null;
}

function shares(band: DecayBand, project: Project, measures: Measures): readonly Share[] {
  const lookup = finishLookup(project);
  const surfaces = band.surfaces.map((surface): Share => {
    const finish = lookup(surface.finish);
    const name = finish ? finishName(finish, measures.units) : surface.finish;
    return {
      key: `${surface.face}|${surface.patch ?? ''}`,
      what: surface.patch ? `${faceName(surface.face)}, ${surface.patch}` : faceName(surface.face),
      detail: name,
      source: `${name}: ${measures.area(surface.areaM2)} of ${surface.coefficient ?? 'no figure'}`,
      areaM2: surface.coefficient === null ? null : surface.areaM2 * surface.coefficient,
    };
  });
  const objects = band.objects.map((object): Share => {
    const name = itemOf(object.item)?.name ?? object.item;
    return {
      key: `object|${object.id}`,
      what: `${object.count} ×`,
      detail: name,
      source: `${name}: ${itemOf(object.item)?.source ?? ''}`,
      areaM2: object.areaM2,
    };
  });
  const air: Share = {
    key: 'air',
    what: 'air',
    detail: 'ISO 9613-1',
    source: '4mV, ISO 9613-1',
    areaM2: band.airAbsorptionM2,
  };
  return [...surfaces, ...objects, air].sort((a, b) => (b.areaM2 ?? -1) - (a.areaM2 ?? -1));
}
