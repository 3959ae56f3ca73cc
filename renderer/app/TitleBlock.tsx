/** The title block of the sheet: what room, what size, which view, which revision, when. */

import { useEffect, useState, type ReactElement } from 'react';
import { formatLength } from '../../core/quantity/length';
import { fileOf, isUnsaved, useProject, useSession } from '../state/session';
import { viewTitle } from '../drawing/view-names';
import { localDate } from './local-date';

export function TitleBlock(): ReactElement {
  const project = useProject();
  const units = useSession((session) => session.units);
  const view = useSession((session) => session.view);
  const revision = useSession((session) => session.work.past.length);
  const file = useSession((session) => fileOf(session).name);
  const unsaved = useSession(isUnsaved);
  const { width, length, height } = project.room.size;
  useEffect(() => {
    document.title = `${unsaved ? 'Not saved: ' : ''}${project.name} · Roomwright`;
  }, [unsaved, project.name]);
  const size = [width, length, height].map((side) => formatLength(side, units)).join(' × ');
  return (
    <div className="title-block" aria-label="Title block">
      <RoomName />
      <dl>
        <div>
          <dt>finished size, W × L × H</dt>
          <dd>{size}</dd>
        </div>
        <div>
          <dt>view</dt>
          <dd>{viewTitle(view)}</dd>
        </div>
        <div className="revision-cell">
          <dt>revision</dt>
          <dd>{revision}</dd>
        </div>
        <div>
          <dt>date</dt>
          <dd>{localDate(new Date())}</dd>
        </div>
        <div className="file-cell">
          <dt>file</dt>
          <dd>
            <span className="file-name">{file}</span>
            {unsaved ? <span className="save-state"> · not saved</span> : null}
          </dd>
        </div>
      </dl>
    </div>
  );
}

function RoomName(): ReactElement {
  const project = useProject();
  const change = useSession((session) => session.change);
  const [typed, setTyped] = useState<string | null>(null);
  const take = (): void => {
    const name = (typed ?? '').trim().slice(0, 120);
    setTyped(null);
    if (typed !== null && name !== '') change({ kind: 'name', name });
  };
  return (
    <input
      className="room-name"
      aria-label="Name of the room"
      value={typed ?? project.name}
      maxLength={120}
      data-typing={typed !== null}
      spellCheck={false}
      onChange={(event) => setTyped(event.currentTarget.value)}
      onBlur={take}
      onKeyDown={(event) => {
        if (event.key === 'Enter') event.currentTarget.blur();
        if (event.key === 'Escape') setTyped(null);
      }}
    />
  );
}
