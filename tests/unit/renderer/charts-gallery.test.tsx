/**
 * The charts of the three example rooms as pages that a person can open from the disk:
 * tests/golden/charts/*.html. UPDATE_GOLDEN=1 writes them anew; look at them then.
 */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { STARTING_DESIGNS } from '../../../core/absorbers/design';
import { analyze } from '../../../core/analysis/analyze';
import { seatResponses } from '../../../core/analysis/seat-response';
import { finish } from '../../../core/quantity/slices';
import { boundaryCurve, faceNotches } from '../../../core/reflections/boundary';
import { earlyAtSeat } from '../../../core/reflections/early-at-seat';
import { reflectingRoom } from '../../../core/reflections/image-sources';
import { finishLookup } from '../../../core/room/finishes';
import type { Project } from '../../../core/room/project';
import { listeningPlaces } from '../../../core/room/seats';
import { GivenBoxSize } from '../../../renderer/kit/chart/box-size';
import { seatKey } from '../../../renderer/state/seat-names';
import { EXAMPLES, example, given } from '../support/rooms';
import { stubPage } from './support/window-stubs';

/** A chart at the size that a window of 1440 by 900 gives it. */
const SIZE = { width: 520, height: 220 };
const STYLES = [
  ...['palette', 'charts', 'decay', 'absorber', 'speakers', 'field'].map((name) => `style/${name}`),
  ...['Note', 'Figure', 'chart/chart', 'table/FactTable'].map((name) => `kit/${name}.module`),
];

/** The charts ask for a page when their stores are loaded. */
async function charts(project: Project): Promise<readonly ReactElement[]> {
  const { ModeLanes } = await import('../../../renderer/pressure/ModeLanes');
  const { ThirdOctaves } = await import('../../../renderer/subjects/shell/ThirdOctaves');
  const { BuiltLanes } = await import('../../../renderer/subjects/fittings/BuiltLanes');
  const { DecayChart } = await import('../../../renderer/subjects/decay/DecayChart');
  const { AbsorberChart } = await import('../../../renderer/subjects/decay/AbsorberChart');
  const { SpeakerPanorama } = await import('../../../renderer/subjects/speakers/SpeakerPanorama');
  const { SpeakerTable } = await import('../../../renderer/subjects/speakers/SpeakerTable');
  const { BoundaryChart } = await import('../../../renderer/subjects/speakers/BoundaryChart');
  const { EarlyChart } = await import('../../../renderer/subjects/speakers/EarlyChart');
  const { ResponseChart } = await import('../../../renderer/subjects/bass/ResponseChart');

  const { modes, decay, layout, speakers, findings, air } = analyze(project);
  const speaker = given(speakers[0]);
  const seat = given(listeningPlaces(project)[0]);
  const place = given(project.speakers.placed.find(({ channel }) => channel === speaker.channel));
  const near = {
    reflecting: reflectingRoom(project.room),
    source: place.position,
    receiver: seat.position,
    speedMS: air.speedOfSoundMS,
    finish: finishLookup(project),
  };
  const curve = given(boundaryCurve(near));
  const notches = given(faceNotches(near)).map((notch) => ({
    ...notch,
    inCurve: curve.faces.some(({ face }) => face === notch.hit.face),
    remedy: null,
  }));
  const early = earlyAtSeat(project, air.speedOfSoundMS, speaker.channel, seat);
  const nobody = (): void => undefined;
  const of = `${speaker.channel} at the first seat`;
  const heard = { layout, speakers, findings, chosen: speaker.channel, onChoose: nobody };
  const face = notches[0]?.hit.face ?? null;
  return [
    <ModeLanes key={1} modes={modes} marked={null} />,
    <ThirdOctaves key={2} bands={modes.thirdOctaves} />,
    <BuiltLanes key={3} shell={modes.shell} built={null} limitHz={200} />,
    <DecayChart
      key={4}
      decay={decay}
      schroederHz={modes.schroederHz}
      chosenHz={500}
      onChoose={nobody}
    />,
    <AbsorberChart key={5} design={STARTING_DESIGNS.perforated} />,
    <SpeakerPanorama key={6} {...heard} />,
    <SpeakerTable key={7} {...heard} units="metric" />,
    <BoundaryChart key={8} of={of} curve={curve} notches={notches} face={face} onChoose={nobody} />,
    <EarlyChart
      key={9}
      of={of}
      reflections={early.kind === 'heard' ? early.reflections : []}
      face={face}
      onChoose={nobody}
      onPoint={nobody}
    />,
    <ResponseChart
      key={10}
      responses={finish(seatResponses(project, null))}
      seat={seatKey(seat)}
      isOfRoom
      frequencyHz={63}
      onChoose={nobody}
    />,
  ];
}

/** One element a line, numbers to a hundredth of a px. */
function page(title: string, figures: readonly ReactElement[]): string {
  const links = STYLES.map(
    (name) => `<link rel="stylesheet" href="../../../renderer/${name}.css">`,
  );
  const markup = figures
    .map((figure) =>
      renderToStaticMarkup(<GivenBoxSize value={SIZE}>{figure}</GivenBoxSize>, {
        identifierPrefix: `${figure.key}-`,
      })
        .replaceAll('><', '>\n<')
        .replace(/\d+\.\d{3,}/g, (number) => String(Number(Number(number).toFixed(2)))),
    )
    .join('\n\n');
  return `<!doctype html>\n<meta charset="utf-8">\n<title>${title}</title>\n${links.join('\n')}\n<style>figure { width: ${SIZE.width}px; margin: 16px; background: var(--ground); }</style>\n\n${markup}\n`;
}

describe('the charts of the example rooms', () => {
  beforeAll(() => void stubPage());
  afterAll(() => void vi.unstubAllGlobals());

  it.each(EXAMPLES)('of %s are as they were looked at and agreed to', async (name) => {
    const folder = new URL('../../golden/charts/', import.meta.url);
    const file = new URL(`${name}.html`, folder);
    const drawn = page(name, await charts(example(name)));
    expect(drawn).not.toMatch(/NaN|undefined|Infinity/);
    if (process.env['UPDATE_GOLDEN'] === '1') {
      mkdirSync(folder, { recursive: true });
      writeFileSync(file, drawn);
    }
    expect(drawn).toBe(readFileSync(file, 'utf8'));
  });
});
