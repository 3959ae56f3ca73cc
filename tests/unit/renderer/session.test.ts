import { beforeEach, describe, expect, it, vi } from 'vitest';
import type { Edit } from '../../../core/room/edits';
import { openRoom, saveRoom } from '../../../core/room/open-room';
import type { Gesture } from '../../../renderer/state/gesture';
import type { Session } from '../../../renderer/state/session';
import { stubPage } from './support/window-stubs';

/** A fresh window's store, on the example bay. */
async function freshSession(): Promise<() => Session> {
  stubPage();
  vi.resetModules();
  const { useSession } = await import('../../../renderer/state/session');
  return useSession.getState;
}

let session: () => Session;
let gesture: Gesture;
beforeEach(async () => {
  session = await freshSession();
  gesture = session().begin();
});

const project = () => session().work.present.state.project;
const finish = { id: 'cloth-1', name: 'Cloth', absorption: { '500': 0.3 }, source: 'invented' };
const cloth: Edit = { kind: 'own-finish', finish };
const onBack: Edit = { kind: 'finish', face: 'back', finish: 'cloth-1' };
const width = (metres: number): Edit => ({
  kind: 'size',
  size: { ...project().room.size, width: metres },
});

describe('changes of one gesture', () => {
  it('that speak of different things are both kept, as one step', () => {
    session().change(cloth, gesture);
    session().change(onBack, gesture);
    expect(project().finishesCustom).toContainEqual(finish);
    expect(project().room.finishes.back).toBe('cloth-1');
    expect(openRoom(saveRoom(project()))).toEqual({ ok: true, project: project() });
    expect(session().work.past).toHaveLength(1);
    session().undo();
    expect(project().finishesCustom).not.toContainEqual(finish);
  });

  it('that speak of the same thing start from the room that the gesture found', () => {
    const before = project();
    session().change(width(1.5), gesture);
    session().change(width(3), gesture);
    session().change(width(before.room.size.width), gesture);
    expect(project()).toBe(before);
    expect(session().work.past).toHaveLength(0);
  });

  it('keep what another change of the gesture has made when one of them goes on', () => {
    session().change(onBackWith('panel-12-frame'), gesture);
    session().change(width(3), gesture);
    session().change(width(3.5), gesture);
    expect(project().room.finishes.back).toBe('panel-12-frame');
    expect(project().room.size.width).toBe(3.5);
    expect(session().work.past).toHaveLength(1);
  });

  it('replace a change of several parts as a whole, where they speak of one of its parts', () => {
    const { back } = project().room.finishes;
    const both: Edit = {
      kind: 'several',
      what: 'both',
      edits: [onBackWith('panel-12-frame'), width(3)],
    };
    session().change(both, gesture);
    session().change(width(3.2), gesture);
    expect(project().room.finishes.back).toBe(back);
    expect(project().room.size.width).toBe(3.2);
  });

  it('start anew after undo, and after the gesture has come back to where it began', () => {
    session().change(onBackWith('panel-12-frame'), gesture);
    session().undo();
    session().change(width(3), gesture);
    expect(project().room.finishes.back).not.toBe('panel-12-frame');
    expect(session().work.past).toHaveLength(1);
  });
});

describe('a gesture', () => {
  it('knows the room that it began from, wherever it has got to', () => {
    const before = project();
    session().change(width(3), gesture);
    session().change(width(3.5), gesture);
    expect(gesture.base).toBe(before);
    gesture.takeBack();
    expect(project()).toBe(before);
    expect(session().work.past).toHaveLength(0);
  });

  it('is one step until it ends, and what comes after is another', () => {
    session().change(width(3), gesture);
    gesture.end();
    session().change(width(3.5), gesture);
    expect(session().work.past).toHaveLength(2);
    session().undo();
    expect(project().room.size.width).toBe(3);
  });

  it('begins from the present room where undo has gone back under it', () => {
    const before = project();
    session().change(width(3));
    session().change(width(3.5), gesture);
    session().undo();
    session().undo();
    expect(gesture.base).toBe(before);
  });

  it('of another kind leaves it alone when it ends or is given up', () => {
    session().change(width(3), gesture);
    const other = session().begin();
    other.takeBack();
    other.end();
    session().change(width(3.5), gesture);
    expect(session().work.past).toHaveLength(1);
  });
});

const onBackWith = (id: string): Edit => ({ kind: 'finish', face: 'back', finish: id });

describe('when another subject is opened', () => {
  it('paint and what is pointed at go; what is chosen stays, but a row', () => {
    session().setSubject('one');
    session().select({ kind: 'speaker', channel: 'M+000' });
    session().select({ kind: 'row', row: 'row-1' });
    session().paint({ kind: 'frequency', frequencyHz: 40 });
    session().pointSeat('row-1|1');
    session().setSubject('one');
    expect(session().painted).not.toBeNull();
    session().setSubject('another');
    expect(session()).toMatchObject({
      painted: null,
      pointedSeat: null,
      selected: [{ kind: 'speaker', channel: 'M+000' }],
    });
  });
});

describe('when another room is opened', () => {
  it('the bench has no finish of the old room that "Update" could write into the new one', async () => {
    const { useBench } = await import('../../../renderer/subjects/decay/bench-store');
    const { bareRoom } = await import('../../../renderer/state/examples');
    useBench.getState().keptAs('absorber-1', 'Added.');
    const { design } = useBench.getState();
    session().load(bareRoom('metric'), 'new room');
    expect(useBench.getState()).toMatchObject({ finishId: null, said: null, design });
    useBench.getState().keptAs('absorber-2', 'Added.');
    session().undo();
    expect(useBench.getState().finishId).toBeNull();
  });

  it('nothing of the old room stays chosen, over undo and redo too', async () => {
    const { useBaySearch } = await import('../../../renderer/subjects/shell/proportions-store');
    const { bareRoom } = await import('../../../renderer/state/examples');
    session().load(bareRoom('metric'), 'new room');
    const choose = (): void => {
      session().select({ kind: 'solid', id: 'soffit-1' });
      session().chooseFinding('any');
      session().paint({ kind: 'frequency', frequencyHz: 40 });
      useBaySearch.setState({ state: { kind: 'failed', sentence: 'invented' } });
    };
    for (const step of [session().undo, session().redo]) {
      choose();
      step();
      expect(session()).toMatchObject({ selected: [], findingId: null });
      expect(session().painted).toBeNull();
      expect(useBaySearch.getState()).toMatchObject({ state: { kind: 'idle' }, newest: null });
    }
  });

  it('every field of the room is as it was when the window was opened', async () => {
    const { BELONGS_TO } = await import('../../../renderer/state/session');
    const { bareRoom } = await import('../../../renderer/state/examples');
    const fields = (Object.keys(BELONGS_TO) as (keyof typeof BELONGS_TO)[]).filter(
      (field) => BELONGS_TO[field] === 'room',
    );
    const roomOf = (now: Session) => fields.map((field) => [field, now[field]]);
    const fresh = roomOf(session());
    session().select({ kind: 'speaker', channel: 'M+000' });
    session().chooseFinding('any');
    session().chooseSeat('row-1|0');
    session().pointSeat('row-1|1');
    session().chooseFace('left');
    session().pointFace('right');
    session().paint({ kind: 'frequency', frequencyHz: 40 });
    session().show('speakers', 'early');
    for (const [n, [field, value]] of roomOf(session()).entries())
      expect({ field, value }).not.toEqual({ field, value: fresh[n]?.[1] });
    session().load(bareRoom('metric'), 'new room');
    expect(roomOf(session())).toEqual(fresh);
    expect(session().shown).toEqual({ speakers: 'early' });
  });

  it('undo within one room and saving leave the choice alone', () => {
    session().select({ kind: 'solid', id: 'soffit-1' });
    session().change(width(3));
    session().markSaved({ name: 'den.room.json', token: null, saved: project() });
    session().undo();
    session().markSaved({ name: 'den.room.json', token: null, saved: project() });
    session().redo();
    expect(session().selected).toEqual([{ kind: 'solid', id: 'soffit-1' }]);
    expect(session().work.past[0]?.state.file).toBe(session().work.present.state.file);
  });
});
