/** Finishes as choices, and what is known about one in a line. */

import { coefficientUncertainty } from '../../core/decay/uncertainty';
import { bandMark, OCTAVES_HZ } from '../../core/quantity/bands';
import { faceName } from '../../core/room/faces';
import { absorptionAt, FINISHES, type Finish } from '../../core/room/finishes';
import type { Face, Project } from '../../core/room/project';
import type { SelectGroup } from '../controls/SelectField';

/** A face of the shell as the label of its field: `Screen wall`. */
export function faceLabel(face: Face): string {
  const name = faceName(face);
  return name.charAt(0).toUpperCase() + name.slice(1);
}

/** The library by category, made once: it does not change while the program runs. */
const LIBRARY: readonly SelectGroup[] = [...new Set(FINISHES.map((known) => known.category))].map(
  (category) => ({
    heading: category,
    options: FINISHES.filter((known) => known.category === category).map((known) => ({
      value: known.id,
      label: known.name,
    })),
  }),
);

/** Every finish the project may use, its own first. */
export function finishGroups(project: Project): readonly SelectGroup[] {
  const own = project.finishesCustom.map(({ id, name }) => ({ value: id, label: name || id }));
  return own.length > 0 ? [{ heading: 'Own finishes', options: own }, ...LIBRARY] : LIBRARY;
}

/** How a finish's figures are known. */
export function knownHow(finish: Finish): string {
  return finish.howKnown === 'own' ? 'typed in here' : 'read in a transcription of it';
}

/** Source and mark of a finish in one sentence. */
export function sourceLine(finish: Finish | undefined): string {
  return finish ? `${finish.source}; ${knownHow(finish)}.` : 'No such finish.';
}

/** Coefficients by octave with their usual error: `125 Hz 0.29 ±0.17`. */
export function coefficientLine(finish: Finish): string {
  const figures = OCTAVES_HZ.flatMap((hz) => {
    const value = absorptionAt(finish, hz);
    return value === null ? [] : [`${bandMark(hz)} ${value}`];
  });
  return figures.length === 0 ? 'no figures yet' : figures.join(', ');
}

/** The usual error of a coefficient in words. */
export const UNCERTAINTY_LINE = `Laboratories differ by about ±${coefficientUncertainty(125)} at 125 Hz and ±${coefficientUncertainty(500)} above (95 %, typical values of ISO 12999-2); of a hard face half its coefficient is taken at most.`;
