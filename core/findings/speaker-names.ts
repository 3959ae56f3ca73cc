/** What findings call a loudspeaker. */

import type { Channel } from '../speakers/layouts';
import type { Finding } from './finding';

/** `Left surround (M+110)`. */
export const channelTitle = ({ name, label }: Pick<Channel, 'name' | 'label'>): string =>
  `${name} (${label})`;

/** Its place in words and for the drawing. */
export const aboutChannel = (channel: Channel): Pick<Finding, 'where' | 'place'> => ({
  where: channelTitle(channel),
  place: { kind: 'speaker', channel: channel.label },
});
