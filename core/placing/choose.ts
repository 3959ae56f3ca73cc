/** One place for every channel: pairs as even as the room allows, and no box in another. */

import { overlapM } from '../scene/box';
import { claimOf } from '../speakers/obstacles';
import { roughly, type Candidate, type Candidates } from './candidates';
import { unevenDeg, UNEVEN_WEIGHT } from './harm';
import { practice } from '../room/practice/practice';

/** The mirrored channel's label: `M+110` and `M-110`; null for one in the middle. */
export function twinOf(label: string): string | null {
  if (/^[A-Z]+[+-]?(000|180)$/.test(label)) return null;
  return label.replace(/[+-]/, (sign) => (sign === '+' ? '-' : '+'));
}

/** A way to place a pair, or a single channel. */
interface Way {
  readonly places: readonly Candidate[];
  readonly cost: number;
}

/** What a pair that is held in two ways costs, degrees. */
const UNLIKE_MOUNTS = practice('pair-unlike-mounts');
/** A pair mirrors where it is uneven by less, degrees: what a tape measure can set on either side. */
const EVEN_DEG = 1;
/** Best places of each side that are tried together, and ways of a pair that are kept. */
const PER_SIDE = 40;
const PER_PAIR = 80;
/** Ways that are looked at before the search takes what it has. */
const MOST_STEPS = 4000;

/**
 * Cheap places without one box in another: pair by pair the cheapest way that is free, from the pair
 * with the fewest ways, going back where a later one finds none. `fixed` are directions of pinned twins. A channel without candidates has no place in the answer.
 */
export function choose(
  all: readonly Candidates[],
  fixed: ReadonlyMap<string, Candidate['direction']>,
): readonly Candidate[] {
  const groups = grouped(all, fixed).sort((a, b) => a.length - b.length);
  const most = groups.reduce((sum, ways) => sum + (ways[0]?.places.length ?? 0), 0);
  let best: readonly Candidate[] = [];
  let steps = 0;
  // Ways come cheapest first, so the first complete answer is the one that is taken.
  const go = (n: number, taken: readonly Candidate[]): void => {
    if (n === groups.length) {
      if (taken.length > best.length) best = taken;
      return;
    }
    let fits = false;
    for (const way of groups[n] ?? []) {
      if (best.length === most || (++steps > MOST_STEPS && best.length > 0)) return;
      if (way.places.some((place) => taken.some((other) => meet(place, other)))) continue;
      fits = true;
      go(n + 1, [...taken, ...way.places]);
    }
    if (!fits) go(n + 1, taken);
  };
  go(0, []);
  return best;
}

const meet = (a: Candidate, b: Candidate): boolean => overlapM(claimOf(a.box), claimOf(b.box)) > 0;

function grouped(
  all: readonly Candidates[],
  fixed: ReadonlyMap<string, Candidate['direction']>,
): Way[][] {
  const groups: Way[][] = [];
  for (const { channel, list } of all) {
    const twin = twinOf(channel.label);
    const other = all.find((candidates) => candidates.channel.label === twin);
    if (other && other.list.length > 0 && list.length > 0) {
      // A pair is made once, from its left.
      if (channel.label.includes('+')) groups.push(pairWays(list, other.list));
      continue;
    }
    const still = twin === null ? undefined : fixed.get(twin);
    const ways = list.map((place): Way => {
      const uneven = still ? UNEVEN_WEIGHT * unevenDeg(place.direction, still) : 0;
      return { places: [place], cost: place.harm.cost + uneven };
    });
    if (ways.length > 0) groups.push(sorted(ways));
  }
  return groups;
}

function pairWays(lefts: readonly Candidate[], rights: readonly Candidate[]): Way[] {
  const ways: Way[] = [];
  const even = new Set<number>();
  for (const left of lefts.slice(0, PER_SIDE))
    for (const right of rights.slice(0, PER_SIDE)) {
      const uneven = unevenDeg(left.direction, right.direction);
      const mounts = left.mount === right.mount ? 0 : UNLIKE_MOUNTS;
      const cost = left.harm.cost + right.harm.cost + UNEVEN_WEIGHT * uneven + mounts;
      ways.push({ places: [left, right], cost });
      if (uneven < EVEN_DEG && mounts === 0) even.add(ways.length - 1);
    }
  // A pair that mirrors is taken wherever there is one, whatever an uneven one would spare the others.
  const mirrored = ways.filter((_, n) => even.has(n));
  const parted = ways.filter((_, n) => !even.has(n));
  return [...sorted(mirrored), ...sorted(parted)].slice(0, PER_PAIR);
}

const sorted = (ways: Way[]): Way[] => ways.sort((a, b) => roughly(a.cost) - roughly(b.cost));
