/** One press changes the view; the eye glides there. Pressed again, it shows the whole room. */

import type { ReactElement } from 'react';
import { Choice } from '../kit/controls/Choice';
import { useSession, type View } from '../state/session';

const OPTIONS: readonly { value: View; label: string; title: string }[] = [
  { value: 'room', label: 'Room', title: 'In space: drag to look around (1)' },
  { value: 'plan', label: 'Plan', title: 'From above, screen wall on the left (2)' },
  { value: 'section', label: 'Long section', title: 'From the left wall (3)' },
  { value: 'front', label: 'Cross section', title: 'From the back, to the screen (4)' },
];

export function ViewChoice(): ReactElement {
  const view = useSession((session) => session.view);
  const setView = useSession((session) => session.setView);
  return (
    <div className="view-choice">
      <Choice
        legend="View"
        hideLegend
        options={OPTIONS}
        value={view}
        onChange={setView}
        onAgain={() => setView(view)}
      />
    </div>
  );
}
