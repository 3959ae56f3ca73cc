/**
 * The best places that were found, beside what stands now. A row shows its places in the drawing while it
 * has the focus; its button puts the subwoofers there.
 */

import { useEffect, type ReactElement } from 'react';
import type { Driven, SetMeasures } from '../../../core/bass/measure';
import type { PlaceSearch } from '../../../core/analysis/subwoofer-search';
import { measuresIn } from '../../../core/quantity/measures';
import type { Point, Project } from '../../../core/room/project';
import { boxOfSize } from '../../../core/scene/subwoofer-box';
import type { SubwooferSearch } from '../../../core/bass/search';
import { assumedText } from '../../../core/analysis/room-field';
import { useFineModes } from '../../pressure/built-store';
import { failureOf, shareOf } from '../../state/jobs';
import { signed } from '../../kit/chart/signed';
import { Progress } from '../../kit/controls/Progress';
import { Term } from '../../glossary/Term';
import { useProject, useSession } from '../../state/session';
import { usePreview, previewRow } from '../../state/preview';
import { boxText } from './box-text';
import { bandText } from './band-text';
import { inTheWayText, placeText } from './place-text';
import { holdsFor, usePlaces, usePlaceSearch, type FoundPlaces } from './places-store';
import { scrollable } from '../../kit/controls/scrollable';

export function PlaceTable(): ReactElement {
  const start = usePlaces((store) => store.start);
  const { newest: answer, stop } = usePlaceSearch();
  const share = usePlaceSearch(shareOf);
  const failure = usePlaceSearch(failureOf);
  const project = useProject();
  const fine = useFineModes();
  const stale =
    answer !== null &&
    (!holdsFor(answer, project) || (answer.answer.of === 'shell' && fine !== null));
  return (
    <figure className="chart" aria-label="Places for the subwoofers">
      <figcaption>
        Best places{answer ? `, ${bandText(answer.request.options.bandHz)}` : ''}
        {share === null ? null : <Progress share={share} label="Trying places" onStop={stop} />}
        <span className="readout">{share === null && answer ? proof(answer) : ''}</span>
      </figcaption>
      <div className="table-box" {...scrollable('Places found')}>
        {failure ? <p className="complaint">{failure}</p> : null}
        {stale ? <p className="hint">The room has changed since: search again.</p> : null}
        {answer ? <MarksKey found={answer.answer} boxM={answer.request.options.boxM} /> : null}
        {answer?.answer.search ? (
          <FoundTable
            answer={answer}
            search={answer.answer.search}
            project={project}
            stale={stale}
          />
        ) : (
          <p className="empty">
            {answer
              ? 'No place is free for a box of that size, or nobody sits in the room.'
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

/** What the marks on the floor of the drawing mean, and to which point places are measured. */
function MarksKey({
  found,
  boxM,
}: {
  readonly found: PlaceSearch;
  readonly boxM: Point;
}): ReactElement {
  const measures = useSession((session) => measuresIn(session.units));
  const { forbidden } = found.places;
  return (
    <p className="hint marks-key">
      <svg width="12" height="12" aria-hidden="true">
        <rect className="mark-free" x="2" y="2" width="8" height="8" />
      </svg>{' '}
      a box of {boxText(boxM, measures)} can stand there (measured to its middle)
      {forbidden.length > 0 ? (
        <>
          ;{' '}
          <svg width="12" height="12" aria-hidden="true">
            <path className="mark-taken" d="M2 2L10 10M2 10L10 2" />
          </svg>{' '}
          in its way: {inTheWayText(forbidden.map(({ why }) => why))}
        </>
      ) : null}
    </p>
  );
}

function FoundTable(props: {
  readonly answer: FoundPlaces;
  readonly search: SubwooferSearch;
  readonly project: Project;
  /** No longer of this room: to read, not to take. */
  readonly stale: boolean;
}): ReactElement {
  const { answer, search, project, stale } = props;
  const units = useSession((session) => session.units);
  const take = usePlaces((store) => store.take);
  const { row: shown, show, end } = usePreview();
  const { options } = answer.request;
  const { allowed } = answer.answer.places;
  useEffect(() => end, [end, answer]);
  return (
    <table className="places">
      <thead>
        <tr>
          <th scope="col">where</th>
          <th scope="col">
            <Term id="spatialVariance">spread dB</Term>
          </th>
          <th scope="col">
            <Term id="deviation">uneven dB</Term>
          </th>
          <th scope="col">
            <Term id="output">output dB</Term>
          </th>
          <th scope="col">
            <span className="for-readers">put the subwoofers there</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {search.present ? (
          <tr className="chosen">
            <th scope="row">before the search</th>
            <Measures of={search.present} />
            <td />
          </tr>
        ) : null}
        {search.sets.map(({ subwoofers, measures, equals }, n) => {
          const places = subwoofers.flatMap(({ place }): readonly Point[] => {
            const at = allowed[place];
            return at ? [at] : [];
          });
          const boxes = places.map((at) => boxOfSize(project, at, options.boxM));
          const preview = { kind: 'subwoofers', boxes } as const;
          const row = `places-${n}`;
          return (
            <tr key={n} {...(stale ? {} : previewRow(row, preview))}>
              <th scope="row">
                <button
                  type="button"
                  className="show-places"
                  disabled={stale}
                  aria-pressed={shown === row}
                  title={
                    equals.length > 0 ? `${equals.length} mirror images are as good` : undefined
                  }
                  onClick={() => show(row, preview)}
                >
                  {subwoofers.map((sub, m) => (
                    <span key={sub.place}>
                      {placeText(places[m] ?? [0, 0, 0], project, options.boxM, units)}
                      {driveText(sub)}
                    </span>
                  ))}
                </button>
              </th>
              <Measures of={measures} />
              <td>
                <button
                  type="button"
                  className="take-places"
                  disabled={stale}
                  aria-label={`Put the subwoofers at place ${n + 1}`}
                  onClick={() => {
                    end();
                    take(subwoofers);
                  }}
                >
                  Use
                </button>
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function Measures({ of }: { readonly of: SetMeasures }): ReactElement {
  return (
    <>
      <td>{Math.sqrt(of.meanSpatialVarianceDb2).toFixed(1)}</td>
      <td>{of.deviationDb.toFixed(1)}</td>
      <td>{signed(of.outputDb)}</td>
    </>
  );
}

function driveText({ delayMs = 0, levelDb = 0 }: Driven): string {
  const parts = [
    ...(delayMs === 0 ? [] : [`${delayMs} ms`]),
    ...(levelDb === 0 ? [] : [`−${Math.abs(levelDb)} dB`]),
  ];
  return parts.length === 0 ? '' : ` (${parts.join(', ')})`;
}

/** What the search has proved, in words. */
function proof({ answer: { search, of, defaulted }, ms }: FoundPlaces): string {
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
