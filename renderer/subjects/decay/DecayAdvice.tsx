/** Which method to read in this room, and why, in one line. */

import type { ReactElement } from 'react';
import type { MethodAdvice } from '../../../core/decay/advice';
import type { DecayBand } from '../../../core/decay/decay';
import { METHODS } from '../../../core/decay/methods';
import { bandName } from '../../../core/quantity/bands';
import type { Axis } from '../../../core/room/faces';
import { Term } from '../../glossary/Term';

const PAIRS: Readonly<Record<Axis, string>> = {
  0: 'side walls',
  1: 'screen and back wall',
  2: 'floor and ceiling',
};

export interface DecayAdviceProps {
  readonly advice: MethodAdvice;
  readonly bands: readonly DecayBand[];
}

export function DecayAdvice({ advice, bands }: DecayAdviceProps): ReactElement {
  const { method, ratio, limit, hz, strongest, weakest, source } = advice;
  if (ratio === null || hz === null || strongest === null || weakest === null) {
    return (
      <p className="decay-advice">
        <b>No method yet</b>: no octave from 250 Hz to 4 kHz has a figure for every finish.
      </p>
    );
  }
  const band = bands.find((candidate) => candidate.hz === hz);
  const at = bandName(hz);
  const why = `${PAIRS[strongest]} absorb ${ratio.toFixed(ratio < 10 ? 1 : 0)} × as much as ${PAIRS[weakest]}`;
  const title = `Ratio of the absorption exponents of the pairs of faces; limit ${limit}: ${source}. ${METHODS[method].name}: ${METHODS[method].source}.`;
  return (
    <p className="decay-advice">
      {method === 'eyring' ? (
        <>
          <b>
            Read <Term id="eyring">Eyring</Term>
          </b>
          : even enough in most octaves; {why} at {at} (limit {limit}).
        </>
      ) : (
        <>
          <b>
            Read <Term id="arauPuchades">Arau-Puchades</Term> ◆
          </b>
          {band?.methods.arauPuchades
            ? ` (${band.methods.arauPuchades.toFixed(2)} s at ${at})`
            : ` (${at})`}
          : {why} (limit {limit}).
        </>
      )}
      <span className="for-readers">{title}</span>
    </p>
  );
}
