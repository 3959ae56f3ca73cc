/** The marks that tell faces apart, the same in chart, table and drawing: shape first, colour second. */

import type { ReactElement } from 'react';

export type FaceMarkKind = 'notch' | 'far-notch' | 'over' | 'within';

/** One mark of 11 by 11 px, as lettering. */
export function FaceMark({ kind }: { readonly kind: FaceMarkKind }): ReactElement {
  return (
    <svg className={`face-mark ${kind}`} width={11} height={11} aria-hidden="true">
      {kind === 'within' ? <circle cx={5.5} cy={5.5} r={3.8} /> : <path d={PATHS[kind]} />}
    </svg>
  );
}

const PATHS: Readonly<Record<Exclude<FaceMarkKind, 'within'>, string>> = {
  notch: 'M1,2 h9 l-4.5,8 z',
  'far-notch': 'M1,2 h9 l-4.5,8 z',
  over: 'M5.5,0.5 l5,5 l-5,5 l-5,-5 z',
};
