/** Each mode as built with its name, its shift against the plain shell and its error; a row paints it. */

import type { ReactElement } from 'react';
import type { NamedModes } from '../../../core/analysis/named-modes';
import { builtMeant, usePainted } from '../../pressure/painted';
import { builtModeName, modeName } from '../../kit/chart/mode-name';
import { signed } from '../../kit/chart/signed';
import { Source } from '../../kit/Note';
import { FactTable } from '../../kit/table/FactTable';

export function BuiltTable({ built }: { readonly built: NamedModes | null }): ReactElement {
  const { painted, choose } = usePainted();
  const meant = builtMeant(painted, built?.modes ?? []);
  const rows = (built?.modes ?? []).map((mode, n) => ({ mode, key: String(n) }));
  return (
    <FactTable
      title="Shift of each mode"
      caption="Shift of each mode"
      scrolls="Modes as built"
      rows={rows}
      keyOf={({ key }) => key}
      chosen={String(meant)}
      onChoose={({ mode: { frequencyHz, likeShell }, key }) =>
        choose(
          key === String(meant)
            ? null
            : { kind: 'mode', of: 'built', frequencyHz, order: likeShell },
        )
      }
      columns={[
        { key: 'hz', head: 'Hz', cell: ({ mode }) => mode.frequencyHz.toFixed(1) },
        {
          key: 'like',
          head: 'like',
          cell: ({ mode }) =>
            mode.likeShell ? (
              modeName(mode.likeShell)
            ) : (
              <Source of={<i>mixed</i>}>{builtModeName(mode)}</Source>
            ),
        },
        {
          key: 'shift',
          head: 'shift',
          cell: ({ mode }) => (mode.shiftHz === null ? '' : signed(mode.shiftHz)),
        },
        { key: 'error', head: '± %', cell: ({ mode }) => mode.errorPercent.toFixed(2) },
      ]}
      empty={built ? undefined : <p className="empty">They come with the modes as built.</p>}
    />
  );
}
