/**
 * The library of finishes read from its data: sizes and words of both markets, figures taken over from
 * the row that was measured.
 */

import builds from '../../resources/finishes/builds.json';
import published from '../../resources/finishes/finishes.json';
import type { LengthUnits } from '../quantity/length';
import type { AbsorptionByBand } from './project';
import type { Finish } from './finish';

/** A row as it is written in the data; names hold `{metric|North American}`. */
interface Row extends Omit<
  Finish,
  'names' | 'mounting' | 'source' | 'sources' | 'absorption' | 'howKnown'
> {
  readonly mounting?: string;
  readonly absorption?: AbsorptionByBand;
  readonly howKnown?: Finish['howKnown'];
  readonly source?: string;
  /** Id of the row whose figures it takes. */
  readonly figuresOf?: string;
  /** How that row was built, for the reader. */
  readonly standsFor?: string;
}

/** `{12.5 mm|1/2"}` in words of `units`. */
export function inUnits(template: string, units: LengthUnits): string {
  return template.replace(/\{([^|}]*)\|([^}]*)\}/g, (_, metric: string, american: string) =>
    units === 'metric' ? metric : american,
  );
}

const both = (template: string): Readonly<Record<LengthUnits, string>> => ({
  metric: inUnits(template, 'metric'),
  imperial: inUnits(template, 'imperial'),
});

/** Every row of the library: what was measured first, then what is built from it or computed. */
export function readLibrary(): readonly Finish[] {
  const measured = published.finishes as unknown as readonly Row[];
  const byId = new Map(measured.map((row) => [row.id, row]));
  return [...measured, ...(builds.finishes as unknown as readonly Row[])].map((row) =>
    finishOf(row, row.figuresOf === undefined ? row : byId.get(row.figuresOf)),
  );
}

function finishOf(row: Row, figures: Row | undefined): Finish {
  const { name, standsFor, figuresOf, ...rest } = row;
  if (!figures?.absorption || figures.source === undefined || figures.howKnown === undefined) {
    throw new Error(`The finish ${row.id} has no figures.`);
  }
  const source =
    standsFor === undefined ? figures.source : `${figures.source}; ${standsFor} (${figuresOf})`;
  const names = both(name);
  return {
    ...rest,
    name: names.metric,
    names,
    mounting: figures.mounting ?? row.mount,
    absorption: figures.absorption,
    source: inUnits(source, 'metric'),
    sources: both(source),
    howKnown: figures.howKnown,
  };
}
