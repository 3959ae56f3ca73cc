/** The best places that were found, beside what stands now; a press puts the subwoofers there. */

import type { ReactElement } from 'react';
import type { Driven, SetMeasures } from '../../core/bass/measure';
import { formatLength, type LengthUnits } from '../../core/quantity/length';
import type { Point, ShellSize } from '../../core/room/project';
import type { SubwooferSearch } from '../../core/bass/search';
import { assumedText } from '../../core/analysis/room-field';
import { useFineModes } from '../field/use-painting';
import { signed } from '../charts/signed';
import { Progress } from '../controls/Progress';
import { useProject, useSession } from '../state/session';
import { placesKey, usePlaces, type FoundPlaces } from './places-store';
import { scrollable } from '../controls/scrollable';

export function PlaceTable(): ReactElement {
  const { share, answer, failure, start, stop } = usePlaces();
  const project = useProject();
  const fine = useFineModes();
  const stale =
    answer !== null &&
    (answer.key !== placesKey(project) || (answer.found.of === 'shell' && fine !== null));
  return (
    <figure className="chart" aria-label="Places for the subwoofers">
      <figcaption>
        Best places
        {share === null ? null : <Progress share={share} label="Trying places" onStop={stop} />}
        <span className="readout">{share === null && answer ? proof(answer) : ''}</span>
      </figcaption>
      <div className="table-box" {...scrollable('Places found')}>
        {failure ? <p className="complaint">{failure}</p> : null}
        {stale ? <p className="hint">The room has changed since: search again.</p> : null}
        {answer?.found.search ? (
          <FoundTable
            answer={answer}
            search={answer.found.search}
            size={project.room.size}
            stale={stale}
          />
        ) : (
          <p className="empty">
            {answer
              ? 'No place is free for a box of that size, or nobody sits in the room. See the crosses in the plan.'
              : 'Every place along the walls is tried at every seat.'}
            {share === null ? (
              <button type="button" onClick={start}>
                Find the best places
              </button>
            ) : null}
          </p>
        )}
      </div>
    </figure>
  );
}

function FoundTable(props: {
  readonly answer: FoundPlaces;
  readonly search: SubwooferSearch;
  readonly size: ShellSize;
  /** No longer of this room: to read, not to take. */
  readonly stale: boolean;
}): ReactElement {
  const { answer, search, size, stale } = props;
  const units = useSession((session) => session.units);
  const take = usePlaces((store) => store.take);
  return (
    <table className="places">
      <thead>
        <tr>
          <th scope="col">where</th>
          <th
            scope="col"
            title="Mean over frequency of the variance of the level over the seats (Welti and Devantier 2006)"
          >
            spread dB²
          </th>
          <th scope="col" title="Standard deviation over frequency of the average of the seats">
            uneven dB
          </th>
          <th scope="col" title="Mean level, less that of one of them alone">
            output dB
          </th>
        </tr>
      </thead>
      <tbody>
        {search.present ? (
          <tr className="chosen">
            <th scope="row">before the search</th>
            <Measures of={search.present} />
          </tr>
        ) : null}
        {search.sets.map(({ subwoofers, measures, equals }, n) => (
          <tr key={n}>
            <th scope="row">
              <button
                type="button"
                className="take-places"
                disabled={stale}
                title={equals.length > 0 ? `${equals.length} mirror images are as good` : undefined}
                onClick={() => take(subwoofers)}
              >
                {subwoofers.map((sub) => (
                  <span key={sub.place}>
                    {placeText(answer.found.places.allowed[sub.place] ?? [0, 0, 0], size, units)}
                    {driveText(sub)}
                  </span>
                ))}
              </button>
            </th>
            <Measures of={measures} />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Measures({ of }: { readonly of: SetMeasures }): ReactElement {
  return (
    <>
      <td>{of.meanSpatialVarianceDb2.toFixed(1)}</td>
      <td>{of.deviationDb.toFixed(1)}</td>
      <td>{signed(of.outputDb)}</td>
    </>
  );
}

/** `front wall, 1.20 m from left`: as a tape measure reads it. */
function placeText([x, y]: Point, { width, length }: ShellSize, units: LengthUnits): string {
  const off = [y, length - y, x, width - x];
  const wall = off.indexOf(Math.min(...off));
  return wall < 2
    ? `${wall === 0 ? 'front' : 'back'} wall, ${formatLength(x, units)} from left`
    : `${wall === 2 ? 'left' : 'right'} wall, ${formatLength(y, units)} from front`;
}

function driveText({ delayMs = 0, levelDb = 0 }: Driven): string {
  const parts = [
    ...(delayMs === 0 ? [] : [`${delayMs} ms`]),
    ...(levelDb === 0 ? [] : [`−${Math.abs(levelDb)} dB`]),
  ];
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

/** What the search has proved, in words. */
function proof({ found: { search, of, defaulted }, ms }: FoundPlaces): string {
  if (!search) return '';
  const assumed = defaulted > 0 ? `, ${assumedText(defaulted)}` : '';
  const room = `${of === 'built' ? 'as built' : 'plain shell'}${assumed}`;
  const tried = `${search.tried.toLocaleString('en')} tried in ${(ms / 1000).toFixed(1)} s, ${room}`;
  if (search.provenGapDb2 === 0) return `proved best: all ${tried}`;
  if (search.drives === 'descent' && search.tried === search.total) {
    return `places proved, delays by descent: ${tried}`;
  }
  return `not proved: ${search.tried.toLocaleString('en')} of ${search.total.toLocaleString('en')} tried, ${room}`;
}
