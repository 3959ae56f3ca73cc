/** The chosen octave by every method, with source. */

import type { ReactElement } from 'react';
import { METHOD_IDS, METHODS } from '../../../core/decay/methods';
import { COEFFICIENT_SOURCE } from '../../../core/decay/uncertainty';
import { bandName } from '../../../core/quantity/bands';
import { useAnalysis, useSession } from '../../state/session';
import { FoldGroup } from '../../kit/controls/FoldGroup';
import { Figures } from '../../glossary/Figures';

const seconds = (value: number | null): string =>
  value === null ? 'no figure' : `${value.toFixed(2)} s`;

export function DecayMethods(): ReactElement | null {
  const { decay } = useAnalysis();
  const bandHz = useSession((session) => session.bandHz);
  const band = decay.bands.find((candidate) => candidate.hz === bandHz);
  if (!band) return null;
  const error = band.coefficientBandS;
  return (
    <FoldGroup title="Methods" tally={`at ${bandName(bandHz)}`}>
      <Figures
        rows={[
          ...METHOD_IDS.map(
            (id) =>
              [
                METHODS[id].name,
                seconds(band.methods[id]),
                `${METHODS[id].source}. Holds for: ${METHODS[id].holds}`,
                id,
              ] as const,
          ),
          [
            'Eyring, coefficients off',
            error === null ? 'no figure' : `${error[0].toFixed(2)} to ${error[1].toFixed(2)} s`,
            COEFFICIENT_SOURCE,
            'coefficientError',
          ],
        ]}
      />
    </FoldGroup>
  );
}
