/** Each mode as built with its name, its shift against the plain shell and its error; a row paints it. */

import type { ReactElement } from 'react';
import type { NamedModes } from '../../../core/analysis/named-modes';
import { builtMeant, usePainted } from '../../pressure/painted';
import { builtModeName, modeName } from '../../kit/chart/mode-name';
import { signed } from '../../kit/chart/signed';
import { scrollable } from '../../kit/controls/scrollable';

export function BuiltTable({ built }: { readonly built: NamedModes | null }): ReactElement {
  const { painted, choose } = usePainted();
  const meant = builtMeant(painted, built?.modes ?? []);
  return (
    <figure className="chart" aria-label="Shift of each mode">
      <figcaption>Shift of each mode</figcaption>
      <div className="table-box" {...scrollable('Modes as built')}>
        {built ? (
          <table>
            <thead>
              <tr>
                <th scope="col">Hz</th>
                <th scope="col">like</th>
                <th scope="col">shift</th>
                <th scope="col">± %</th>
              </tr>
            </thead>
            <tbody>
              {built.modes.map((mode, n) => {
                const { frequencyHz, likeShell, shiftHz } = mode;
                const chosen = n === meant;
                return (
                  <tr key={n} className={chosen ? 'chosen' : undefined}>
                    <th scope="row">
                      <button
                        type="button"
                        aria-pressed={chosen}
                        onClick={() =>
                          choose(
                            chosen
                              ? null
                              : { kind: 'mode', of: 'built', frequencyHz, order: likeShell },
                          )
                        }
                      >
                        {frequencyHz.toFixed(1)}
                      </button>
                    </th>
                    <td title={builtModeName(mode)}>
                      {likeShell ? modeName(likeShell) : <i>mixed</i>}
                    </td>
                    <td>{shiftHz === null ? '' : signed(shiftHz)}</td>
                    <td>{mode.errorPercent.toFixed(2)}</td>
                  </tr>
                );
              })}
            </tbody>
          </table>
        ) : (
          <p className="empty">They come with the modes as built.</p>
        )}
      </div>
    </figure>
  );
}
