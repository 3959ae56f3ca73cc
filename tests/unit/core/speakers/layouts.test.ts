import { describe, expect, it } from 'vitest';
import { analyze } from '../../../../core/analysis/analyze';
import { applyEdit } from '../../../../core/room/edits';
import { openRoom, saveRoom } from '../../../../core/room/open-room';
import type { Point, Project } from '../../../../core/room/project';
import { judgeSpeakers } from '../../../../core/speakers/judge';
import { summary } from '../../../../core/report/summary';
import { tables } from '../../../../core/report/tables';
import { laterPlan } from '../../../../core/speakers/later';
import { laterEdit, layoutEdit } from '../../../../core/speakers/layout-edit';
import { LAYOUTS, layoutOf } from '../../../../core/speakers/layouts';
import { findingIds, findingOf, tried } from '../../support/remedies';
import { given, roomOf, type Fields } from '../../support/rooms';

const room = (speakers: Fields): Project =>
  roomOf({}, { seating: { rows: [{ id: 'a', seats: 1, y: 3, earHeightM: 1.1 }] }, speakers });

const changedTo = (project: Project, id: string): Project =>
  applyEdit(project, layoutEdit(project, given(layoutOf(id))));

const placeOf = (project: Project, channel: string): Point | undefined =>
  project.speakers.placed.find((speaker) => speaker.channel === channel)?.position;

const byChannel = (a: { channel: string }, b: { channel: string }): number =>
  a.channel.localeCompare(b.channel);

describe('a layout', () => {
  it.each(LAYOUTS)(
    '$id has pairs that mirror each other in every recommendation',
    ({ id, recommendations }) => {
      for (const recommendation of recommendations) {
        const { channels } = given(layoutOf(id, recommendation.id));
        for (const channel of channels) {
          const label = channel.label.replace(/[+-]/, (sign) => (sign === '+' ? '-' : '+'));
          const twin = channels.find((other) => other.label === label);
          if (channel.nominalAzimuth === 0) continue;
          expect(twin?.nominalAzimuth).toBe(-channel.nominalAzimuth);
          expect(twin?.azimuth).toEqual([-channel.azimuth[1], -channel.azimuth[0]]);
          expect(twin?.elevation).toEqual(channel.elevation);
          expect(channel.azimuth[0]).toBeLessThanOrEqual(channel.nominalAzimuth);
          expect(channel.azimuth[1]).toBeGreaterThanOrEqual(channel.nominalAzimuth);
        }
      }
    },
  );

  it('takes its first recommendation where none is named, or one that it does not have', () => {
    expect(layoutOf('0+7+0')?.recommendation.id).toBe('bs2051');
    expect(layoutOf('0+7+0', 'nobody')?.recommendation.id).toBe('bs2051');
    expect(layoutOf('4+7+0', 'bs775')?.recommendation.id).toBe('bs2051');
    expect(layoutOf('9+9+9', 'bs775')).toBeUndefined();
  });
});

describe('the recommendation that judges', () => {
  // 1.7 m to the left and 1 m ahead of the ears: 59.5 degrees, 5 degrees up.
  const side: Fields = { channel: 'M+090', position: [0.3, 2.0, 1.27] };
  const project = room({ layout: '0+7+0', placed: [side] });

  it('is the chosen one', () => {
    const first = given(judgeSpeakers(project).speakers[0]);
    expect([first.inRange, first.azimuthOffDeg < 0, first.elevationOffDeg > 0]).toEqual([
      false,
      true,
      true,
    ]);
    const chosen = applyEdit(project, { kind: 'recommendation', recommendation: 'bs775' });
    expect(judgeSpeakers(chosen).speakers[0]).toMatchObject({ inRange: true, azimuthOffDeg: 0 });
    expect(openRoom(saveRoom(chosen))).toEqual({ ok: true, project: chosen });
  });

  it('that the layout does not have is a note, and the first one judges', () => {
    const odd = room({ layout: '0+7+0', recommendation: 'no such', placed: [side] });
    expect(judgeSpeakers(odd).layout?.recommendation.id).toBe('bs2051');
    const finding = findingOf(odd, 'recommendation-unknown');
    expect(finding.severity).toBe('note');
    const trials = tried(odd, finding);
    expect(trials).toHaveLength(2);
    for (const trial of trials) {
      expect(findingIds(trial.project)).not.toContain('recommendation-unknown');
    }
  });
});

describe('changing the layout', () => {
  const surrounds: Fields[] = [
    { channel: 'M+030', position: [0.9, 1.1, 1.1] },
    { channel: 'M+110', position: [0.2, 3.7, 1.2] },
  ];
  const project = room({ layout: '0+5+0', placed: surrounds });

  it('keeps the places of channels that both have', () => {
    expect(placeOf(changedTo(project, '0+7+0'), 'M+030')).toEqual([0.9, 1.1, 1.1]);
  });

  it('to 7.1 makes the surrounds the sides, where they are, and leaves nothing behind', () => {
    const there = changedTo(project, '0+7+0');
    expect(placeOf(there, 'M+090')).toEqual([0.2, 3.7, 1.2]);
    expect(placeOf(there, 'M+110')).toBeUndefined();
    expect(judgeSpeakers(there)).toMatchObject({ missing: [], resting: [], later: [] });
    expect(findingIds(there)).not.toContain('speakers-resting');
    expect(openRoom(saveRoom(there))).toEqual({ ok: true, project: there });
  });

  it('to 7.1 and back loses nothing: the surrounds are where they were, the backs are for later', () => {
    const there = changedTo(project, '0+7+0');
    const back = changedTo(there, '0+5+0');
    expect(placeOf(back, 'M+110')).toEqual([0.2, 3.7, 1.2]);
    expect(judgeSpeakers(back)).toMatchObject({ missing: [], resting: [] });
    expect(judgeSpeakers(back).later.map(({ channel }) => channel)).toEqual(['M+135', 'M-135']);
    expect(findingIds(back)).not.toContain('speakers-resting');
    const again = changedTo(back, '0+7+0');
    expect([...again.speakers.placed].sort(byChannel)).toEqual(
      [...there.speakers.placed].sort(byChannel),
    );
    expect(again.speakers.later).toBeUndefined();
  });

  it('through all layouts gives each its own channels and no others to judge', () => {
    let present = project;
    for (const layout of [...LAYOUTS, ...LAYOUTS]) {
      present = changedTo(present, layout.id);
      const labels = layout.channels.map((channel) => channel.label);
      const heard = judgeSpeakers(present).speakers.map((speaker) => speaker.channel);
      expect([...heard].sort()).toEqual([...labels].sort());
    }
  });

  it('marks what is kept as not in this layout, and nothing counts it', () => {
    const far = room({
      layout: '0+5+0',
      placed: [...surrounds, { channel: 'M+090', position: [0.1, 0.1, 2.9] }],
    });
    const judged = judgeSpeakers(far);
    expect(judged.resting.map(({ channel }) => channel)).toEqual(['M+090']);
    // Neither its distance nor its place enters the alignment of the others.
    expect(judged.speakers).toEqual(judgeSpeakers(project).speakers);
    const finding = findingOf(far, 'speakers-resting');
    expect(finding).toMatchObject({ severity: 'note', where: 'M+090', value: 1 });
    expect(finding.message).toContain('Not in this layout');
    for (const trial of tried(far, finding)) {
      expect(findingIds(trial.project)).not.toContain('speakers-resting');
      expect(trial.project.speakers.placed).toHaveLength(2);
    }
    expect(analyze(far).speakers).toHaveLength(2);
  });
});

describe('a layout to come', () => {
  const planned = (id: string): Project => {
    const now = changedTo(room({ layout: '0+5+0' }), '0+5+0');
    return applyEdit(now, laterEdit(now, id));
  };

  it('has places for what it adds, and takes no part in what is judged now', () => {
    const now = changedTo(room({ layout: '0+5+0' }), '0+5+0');
    const later = applyEdit(now, laterEdit(now, '4+7+0'));
    const { speakers, later: plan } = analyze(later);
    expect(speakers).toEqual(analyze(now).speakers);
    expect(plan.map(({ channel }) => channel)).toEqual([
      'M+135',
      'M-135',
      'U+045',
      'U-045',
      'U+135',
      'U-135',
    ]);
    for (const one of plan) expect(one.inRange).toBe(true);
    const ids = (of: Project) => findingIds(of).filter((id) => !id.startsWith('room'));
    expect(ids(later)).toEqual(ids(now));
    expect(openRoom(saveRoom(later))).toEqual({ ok: true, project: later });
    expect(applyEdit(later, laterEdit(later, null))).toEqual(now);
  });

  it('is listed for later, in words and in the table', () => {
    const later = planned('0+7+0');
    const analysis = analyze(later);
    expect(summary(later, analysis)).toMatch(/M\+135 .* for later \(Left back\)/);
    const [placements] = tables(later, analysis);
    expect(placements?.text.match(/^loudspeaker for later,/gm)).toHaveLength(2);
  });

  it('that is not known, or adds nothing, plans nothing', () => {
    for (const later of ['odd', '', '0+5+0']) {
      const odd = room({ layout: '0+5+0', later });
      expect(laterPlan(odd)).toBeNull();
      expect(openRoom(saveRoom(odd)).ok).toBe(true);
    }
  });
});
