/** What the views of the room are called: flat ones by their record in core. */

import { FLAT_VIEWS } from '../../core/drawing/views';
import type { View } from '../state/session';

/** On the sheet. */
export const viewTitle = (view: View): string =>
  view === 'room' ? 'In space' : FLAT_VIEWS[view].title;

/** In a sentence. */
export const viewName = (view: View): string =>
  view === 'room' ? 'in space' : FLAT_VIEWS[view].name;
