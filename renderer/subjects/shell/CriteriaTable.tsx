/** Every criterion with value, limit and verdict. They disagree, and the list says which one decides. */

import type { ReactElement } from 'react';
import { CRITERIA, type Criterion } from '../../../core/proportions/criteria';
import { useAnalysis } from '../../state/session';
import { Term } from '../../glossary/Term';
import { Figure } from '../../kit/Figure';
import type { TermId } from '../../glossary/terms';

export function CriteriaTable(): ReactElement {
  const { spacing } = useAnalysis().modes;
  return (
    <Figure
      title="Criteria on size and proportions"
      caption="Criteria"
      readout="they disagree; unevenness ranks the search"
    >
      <ul className="criteria" tabIndex={0} aria-label="Criteria">
        {CRITERIA.map((name) => (
          <CriterionLine key={name} criterion={spacing[name]} term={TERM_OF[name]} />
        ))}
      </ul>
    </Figure>
  );
}

const TERM_OF: Readonly<Record<(typeof CRITERIA)[number], TermId>> = {
  axialWidestGap: 'gap',
  axialClosest: 'pileUp',
  axialOverlap: 'bandwidth',
  thirdOctaveDensity: 'rising',
  coincidentModes: 'coincident',
  proportionInequality: 'inequality',
  wholeRatios: 'wholeRatio',
  proportionArea: 'proportionArea',
  goodRatio: 'goodRatio',
  smoothness: 'smoothness',
  unevenness: 'unevenness',
};

const VERDICTS = {
  true: { mark: '●', word: 'met' },
  false: { mark: '△', word: 'not met' },
  null: { mark: '–', word: 'no limit: compares rooms' },
} as const;

function CriterionLine(props: {
  readonly criterion: Criterion;
  readonly term: TermId;
}): ReactElement {
  const { criterion, term } = props;
  const { title, value, limit, pass, unit, says, source, validity } = criterion;
  const verdict = VERDICTS[`${pass}`];
  const figure = (number: number | null): string =>
    number === null ? 'unknown' : `${Number(number.toFixed(unit === '' ? 2 : 1))} ${unit}`.trim();
  return (
    <li className={pass === false ? 'not-met' : undefined}>
      <span className="criterion-mark" aria-hidden="true">
        {verdict.mark}
      </span>
      <span className="criterion-title">
        <Term id={term}>{title}</Term>
        <span className="for-readers">: {verdict.word}</span>
      </span>
      <span className="criterion-value">{figure(value)}</span>
      <small>
        {says}
        {limit === null ? '' : `; limit ${figure(limit)}`}
        <span className="for-readers">
          . {source}, {validity}
        </span>
      </small>
    </li>
  );
}
