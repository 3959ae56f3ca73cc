/** What the painted pressure means, on the sheet beside the drawing. */

import type { ReactElement } from 'react';
import { BAND_DB, BANDS } from '../pressure/painting';
import type { ShownPainting } from '../pressure/use-painting';
import { usePainted } from '../pressure/painted';
import { useSession, type View } from '../state/session';
import { shadeOf } from './paint-colors';

const STEPS = 9;

export function PaintKey({ painting }: { readonly painting: ShownPainting }): ReactElement {
  const { choose } = usePainted();
  const view = useSession((session) => session.view);
  return (
    <div className="paint-key" aria-label="Key of the painted pressure">
      <p>
        <b>{painting.frequencyHz.toFixed(1)} Hz</b> {painting.name}
        <small>{whereOf(view)}</small>
      </p>
      <div className="paint-legend">
        {painting.kind === 'mode' ? <ModeScale /> : <LevelScale />}
      </div>
      <button
        type="button"
        aria-label="Take the pressure off the drawing"
        title="Take the pressure off the drawing"
        onClick={() => choose(null)}
      >
        ×
      </button>
    </div>
  );
}

const whereOf = (view: View): string =>
  view === 'plan' ? 'pressure at ear height' : 'pressure on the faces';

function ModeScale(): ReactElement {
  const values = Array.from({ length: STEPS }, (_, n) => (2 * n) / (STEPS - 1) - 1);
  return (
    <>
      <div className="paint-scale">
        {values.map((value) => (
          <i key={value} style={shadeStyle(value, 'mode')} />
        ))}
      </div>
      <div className="paint-words">
        <span>loud −</span>
        <span>| silent line</span>
        <span>+ loud</span>
      </div>
    </>
  );
}

function LevelScale(): ReactElement {
  const levels = Array.from({ length: BANDS }, (_, band) => -BAND_DB * band);
  return (
    <>
      <div className="paint-scale">
        {levels.map((level) => (
          <i key={level} style={shadeStyle(level - 0.5, 'frequency')} />
        ))}
      </div>
      <div className="paint-words">
        <span>loudest</span>
        <span>{BAND_DB} dB steps</span>
        <span>−{BAND_DB * (BANDS - 1)} dB</span>
      </div>
    </>
  );
}

function shadeStyle(value: number, kind: 'mode' | 'frequency'): { background: string } {
  const { share, other } = shadeOf(value, kind);
  const full = other ? 'var(--ink)' : 'var(--accent)';
  return { background: `color-mix(in srgb, ${full} ${(100 * share).toFixed(1)}%, var(--raised))` };
}
