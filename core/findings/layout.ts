/** The layout as a whole: not known, channels missing, kept for another layout, or of no layout. */

import type { Project } from '../room/project';
import { LAYOUTS } from '../speakers/layouts';
import { firstPlaces } from '../speakers/first-place';
import type { FindingContext } from './context';
import type { Finding } from './finding';
import { channelTitle } from './speaker-names';

export function layoutFindings(context: FindingContext): readonly Finding[] {
  const { project, speakers } = context;
  const { layout } = speakers;
  if (!layout) return [unknownLayout(project)];
  const strangers = speakers.speakers.filter(
    ({ channel }) => !layout.channels.some(({ label }) => label === channel),
  );
  return [
    ...missing(context),
    ...resting(context),
    ...otherJudge(context),
    ...strangers.map(({ channel }) => stranger(project, channel, layout.id)),
  ];
}

/** What to do where no place can be found from the reference seat. */
export const SEAT_FIRST =
  'Move the seats of the reference place into the open first: no angle can be set out from there.';

function unknownLayout(project: Project): Finding {
  const [first] = LAYOUTS;
  return {
    id: 'layout-unknown',
    severity: 'fault',
    subject: 'speakers',
    where: 'loudspeakers',
    message: `The layout "${project.speakers.layout}" is not known; angles are not judged.`,
    figureName: '',
    value: null,
    limit: null,
    unit: '',
    source: 'ITU-R BS.2051',
    remedies: first
      ? [
          {
            text: `Use ${first.id} (${first.tradeName}).`,
            edit: { kind: 'layout', layout: first.id, placed: project.speakers.placed },
          },
        ]
      : [],
  };
}

function missing({ project, speakers, measures }: FindingContext): readonly Finding[] {
  const { missing: channels, layout } = speakers;
  if (channels.length === 0 || !layout) return [];
  const added = firstPlaces(project, channels, measures.units);
  const [one] = channels.length === 1 ? channels : [];
  const names = channels.map(channelTitle).join(', ');
  const beside = added.some(({ mount }) => mount === 'on-wall');
  return [
    {
      id: 'speakers-missing',
      severity: 'warning',
      subject: 'speakers',
      where: one ? channelTitle(one) : 'loudspeakers',
      message: `${channels.length} of the ${layout.channels.length} loudspeakers of ${layout.tradeName} ${channels.length === 1 ? 'has' : 'have'} no place yet: ${names}.`,
      figureName: 'loudspeakers placed',
      value: layout.channels.length - channels.length,
      limit: layout.channels.length,
      unit: '',
      source: layout.source,
      remedies:
        added.length > 0
          ? [
              {
                text: `Put ${added.length === 1 ? 'it' : 'them'} on the walls at ${added.length === 1 ? 'its nominal angle' : 'their nominal angles'}${beside ? ', or beside the picture where that is in the way' : ''}.`,
                edit: {
                  kind: 'layout',
                  layout: layout.id,
                  placed: [...project.speakers.placed, ...added],
                },
              },
            ]
          : [{ text: SEAT_FIRST }],
    },
  ];
}

/** Places that wait for another layout: not judged, not heard, and not forgotten. */
function resting({ project, speakers }: FindingContext): readonly Finding[] {
  const { resting: kept, layout } = speakers;
  if (kept.length === 0 || !layout) return [];
  const names = kept.map((speaker) => speaker.channel);
  return [
    {
      id: 'speakers-resting',
      severity: 'note',
      subject: 'speakers',
      where: names.join(', '),
      message: `Not in this layout: ${layout.tradeName} has no such channel. The places are kept for a layout that has, and nothing counts them.`,
      figureName: 'places kept',
      value: kept.length,
      limit: 0,
      unit: '',
      source: layout.source,
      remedies: [
        {
          text: 'Take them out of the room.',
          edit: {
            kind: 'layout',
            layout: layout.id,
            placed: project.speakers.placed.filter((speaker) => !kept.includes(speaker)),
          },
        },
      ],
    },
  ];
}

/** The recommendation that was chosen says nothing of this layout. */
function otherJudge({ project, speakers }: FindingContext): readonly Finding[] {
  const wanted = project.speakers.recommendation;
  const { layout } = speakers;
  if (wanted === undefined || !layout || layout.recommendation.id === wanted) return [];
  return [
    {
      id: 'recommendation-unknown',
      severity: 'note',
      subject: 'speakers',
      where: 'loudspeakers',
      message: `There is no recommendation "${wanted}" for ${layout.tradeName}; ${layout.recommendation.title} judges its angles.`,
      figureName: '',
      value: null,
      limit: null,
      unit: '',
      source: layout.source,
      remedies: layout.recommendations.map(({ id, title }) => ({
        text: `Judge by ${title}.`,
        edit: { kind: 'recommendation', recommendation: id },
      })),
    },
  ];
}

function stranger(project: Project, label: string, layout: string): Finding {
  return {
    id: `speaker-unknown:${label}`,
    severity: 'warning',
    subject: 'speakers',
    where: label,
    message: `The layout ${layout} has no channel "${label}"; its angle is not judged.`,
    figureName: '',
    value: null,
    limit: null,
    unit: '',
    source: 'ITU-R BS.2051',
    remedies: [
      {
        text: 'Take this loudspeaker out.',
        edit: {
          kind: 'layout',
          layout: project.speakers.layout,
          placed: project.speakers.placed.filter((speaker) => speaker.channel !== label),
        },
      },
    ],
    place: { kind: 'speaker', channel: label },
  };
}
