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
import { usePreview, type Preview } from '../../state/preview';
import { boxText } from './box-text';
import { bandText } from './band-text';
import { inTheWayText, placeText } from './place-text';
import { holdsFor, usePlaces, usePlaceSearch, type FoundPlaces } from './places-store';
import { FactTable } from '../../kit/table/FactTable';

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
  const units = useSession((session) => session.units);
  const take = usePlaces((store) => store.take);
  const { row: shown, show, end } = usePreview();
  useEffect(() => end, [end, answer]);
  const search = answer?.answer.search ?? null;
  return (
    <FactTable
      title="Places for the subwoofers"
      caption={
        <>
          Best places{answer ? `, ${bandText(answer.request.options.bandHz)}` : ''}
          {share === null ? null : <Progress share={share} label="Trying places" onStop={stop} />}
        </>
      }
      readout={share === null && answer ? proof(answer) : ''}
      scrolls="Places found"
      tableClass="places"
      note={
        <>
          {failure ? <p className="complaint">{failure}</p> : null}
          {stale ? <p className="hint">The room has changed since: search again.</p> : null}
          {answer ? <MarksKey found={answer.answer} boxM={answer.request.options.boxM} /> : null}
        </>
      }
      firstRows={search?.present ? <PresentRow measures={search.present} /> : null}
      rows={answer && search ? rowsOf(answer, search) : []}
      keyOf={({ key }) => key}
      {...(stale ? {} : { preview: (row: PlacesRow) => previewOf(row, project) })}
      columns={[
        {
          key: 'where',
          head: 'where',
          cell: (row) => (
            <button
              type="button"
              className="show-places"
              disabled={stale}
              aria-pressed={shown === row.key}
              onClick={() => show(row.key, previewOf(row, project))}
            >
              {row.set.subwoofers.map((sub, n) => (
                <span key={sub.place}>
                  {placeText(row.places[n] ?? [0, 0, 0], project, row.boxM, units)}
                  {driveText(sub)}
                </span>
              ))}
              {row.set.equals.length === 0 ? null : (
                <small>{row.set.equals.length} mirror images are as good</small>
              )}
            </button>
          ),
        },
        {
          key: 'spread',
          head: <Term id="spatialVariance">spread dB</Term>,
          cell: ({ set }) => spreadText(set.measures),
        },
        {
          key: 'uneven',
          head: <Term id="deviation">uneven dB</Term>,
          cell: ({ set }) => set.measures.deviationDb.toFixed(1),
        },
        {
          key: 'output',
          head: <Term id="output">output dB</Term>,
          cell: ({ set }) => signed(set.measures.outputDb),
        },
        {
          key: 'use',
          head: <span className="for-readers">put the subwoofers there</span>,
          cell: ({ set, n }) => (
            <button
              type="button"
              className="take-places"
              disabled={stale}
              aria-label={`Put the subwoofers at place ${n + 1}`}
              onClick={() => {
                end();
                take(set.subwoofers);
              }}
            >
              Use
            </button>
          ),
        },
      ]}
      empty={
        search ? undefined : (
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
        )
      }
    />
  );
}

interface PlacesRow {
  readonly key: string;
  readonly n: number;
  readonly set: SubwooferSearch['sets'][number];
  readonly places: readonly Point[];
  /** Width, length and height of the box that was looked for. */
  readonly boxM: Point;
}

const rowsOf = (
  {
    answer: found,
    request: {
      options: { boxM },
    },
  }: FoundPlaces,
  search: SubwooferSearch,
): readonly PlacesRow[] =>
  search.sets.map((set, n) => ({
    key: `places-${n}`,
    n,
    set,
    places: set.subwoofers.flatMap(({ place }): readonly Point[] => {
      const at = found.places.allowed[place];
      return at ? [at] : [];
    }),
    boxM,
  }));

const previewOf = ({ places, boxM }: PlacesRow, project: Project): Preview => ({
  kind: 'subwoofers',
  boxes: places.map((at) => boxOfSize(project, at, boxM)),
});

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

/** What stood when the search began. */
function PresentRow({ measures }: { readonly measures: SetMeasures }): ReactElement {
  return (
    <tr className="chosen">
      <th scope="row">before the search</th>
      <td>{spreadText(measures)}</td>
      <td>{measures.deviationDb.toFixed(1)}</td>
      <td>{signed(measures.outputDb)}</td>
      <td />
    </tr>
  );
}

const spreadText = ({ meanSpatialVarianceDb2 }: SetMeasures): string =>
  Math.sqrt(meanSpatialVarianceDb2).toFixed(1);

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
