import type { Load, Network, NetworkElement } from '../../../lib/power/network/network-types.ts';

/** A small seeded generator (mulberry32), so that every run of the tests sees the same networks. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export const topologies = ['tree', 'ring', 'shared-ground', 'mesh', 'alternator'] as const;
/**
 * Batteries that charge make sources of more than one stable state near a collapse: no topologies to be loaded up to
 * it, where ngspice may come to the other one, or to none.
 */
export const chargingTopologies = ['charging', 'charger'] as const;
export type Topology = (typeof topologies)[number] | (typeof chargingTopologies)[number];

/** A load between two nodes, of a model that the number picks. */
function someLoad(id: string, from: string, to: string, pick: number, size: number): Load {
  const common = { id, kind: 'load', from, to } as const;
  if (pick < 0.6) return { ...common, model: 'power', powerW: 20 + 400 * size };
  if (pick < 0.75) return { ...common, model: 'current', givenA: 0.2 + 20 * size };
  if (pick < 0.9) return { ...common, model: 'square-law', powerW: 20 + 300 * size, ratedV: 14.4 };
  return { ...common, model: 'resistance', ohm: 0.5 + 10 * size };
}

/**
 * A vehicle's network by chance: a battery, a feed tree with fuses and joints, and a ground for each device. A
 * ring adds a second battery at the rear and a link; a shared ground sends all returns over one point; a mesh ties
 * feeds, and grounds, to one another; an alternator with a limit stands beside the battery; where it charges, front and
 * rear battery have two slopes and the vehicle draws, too; a charger keeps a rear battery from the front one.
 */
export function randomNetwork(seed: number, topology: Topology): Network {
  const random = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const elements: NetworkElement[] = [
    {
      id: 'battery',
      kind: 'source',
      model: 'emf',
      emfV: between(12, 14.6),
      ohm: between(0.0025, 0.008),
      from: 'feed0',
      to: 'ground0',
    },
  ];
  const passive = (id: string, kind: 'conductor' | 'fuse' | 'joint', from: string, to: string, ohm: number) =>
    elements.push({ id, kind, model: 'resistance', from, to, ohm });
  const feeds = 2 + Math.floor(random() * 10);
  for (let i = 1; i <= feeds; i += 1) {
    const up = Math.floor(random() * i);
    passive(`fuse${i}`, 'fuse', `feed${up}`, `fused${i}`, between(0.0002, 0.004));
    passive(`wire${i}`, 'conductor', `fused${i}`, `feed${i}`, between(0.0005, 0.02));
  }
  const shared = topology === 'shared-ground';
  if (shared) passive('body', 'joint', 'ground-point', 'ground0', between(0.0005, 0.003));
  const devices = 1 + Math.floor(random() * 8);
  for (let i = 1; i <= devices; i += 1) {
    const feed = `feed${1 + Math.floor(random() * feeds)}`;
    passive(`lead${i}`, 'conductor', feed, `device${i}+`, between(0.001, 0.03));
    passive(
      `return${i}`,
      'conductor',
      `device${i}-`,
      shared ? 'ground-point' : 'ground0',
      between(0.0005, 0.01),
    );
    elements.push(someLoad(`load${i}`, `device${i}+`, `device${i}-`, i === 1 ? 0 : random(), random()));
  }
  if (topology === 'ring') addRing(elements, feeds, between);
  if (topology === 'mesh')
    for (let i = 1; i <= Math.min(feeds, devices); i += 1) {
      passive(`feed-tie${i}`, 'conductor', `feed${i}`, `feed${(i + 2) % (feeds + 1)}`, between(0.001, 0.02));
      passive(
        `ground-tie${i}`,
        'conductor',
        `device${i}-`,
        i < devices ? `device${i + 1}-` : 'ground0',
        between(0.001, 0.02),
      );
    }
  if (topology === 'alternator')
    elements.push({
      id: 'alternator',
      kind: 'source',
      model: 'emf',
      emfV: 14.4,
      ohm: between(0.001, 0.004),
      limitA: between(60, 250),
      from: 'feed0',
      to: 'ground0',
    });
  if (topology === 'charging' || topology === 'charger') {
    elements[0] = twoSlopes('battery', 'feed0', 'ground0', between);
    elements.push(
      {
        id: 'alternator',
        kind: 'source',
        model: 'emf',
        emfV: between(12.4, 14.8),
        ohm: between(0.001, 0.004),
        limitA: between(30, 200),
        from: 'feed0',
        to: 'ground0',
      },
      { id: 'vehicle', kind: 'load', model: 'current', givenA: between(5, 60), from: 'feed0', to: 'ground0' },
      twoSlopes('second', 'rear', 'rear-ground', between),
    );
    passive('strap', 'joint', 'rear-ground', 'ground0', between(0.0005, 0.002));
    if (topology === 'charging') passive('link', 'conductor', 'feed0', 'rear', between(0.002, 0.01));
    else elements.push(...charger(between));
  }
  return { referenceNode: 'ground0', elements };
}

type Between = (low: number, high: number) => number;

function twoSlopes(id: string, from: string, to: string, between: Between): NetworkElement {
  return {
    id,
    kind: 'source',
    model: 'two-slope',
    emfV: between(12.2, 12.8),
    ohm: between(0.0025, 0.008),
    chargeOhm: between(0.1, 0.2),
    acceptA: between(5, 15),
    from,
    to,
  };
}

/** A charger from the front to the rear battery, and a device of constant power at the rear one. */
function charger(between: Between): NetworkElement[] {
  return [
    {
      id: 'charger:out',
      kind: 'source',
      model: 'emf',
      emfV: between(13.5, 14.6),
      ohm: between(0.001, 0.004),
      limitA: between(5, 40),
      from: 'rear',
      to: 'rear-ground',
    },
    {
      id: 'charger:in',
      kind: 'load',
      model: 'converter',
      feeds: 'charger:out',
      efficiency: between(0.7, 0.95),
      from: 'feed0',
      to: 'ground0',
    },
    { id: 'rear-load', kind: 'load', model: 'power', powerW: between(5, 500), from: 'rear', to: 'ground0' },
  ];
}

function addRing(
  elements: NetworkElement[],
  feeds: number,
  between: (low: number, high: number) => number,
): void {
  elements.push(
    {
      id: 'second',
      kind: 'source',
      model: 'emf',
      emfV: between(12, 13),
      ohm: 0.004,
      from: 'rear',
      to: 'rear-ground',
    },
    {
      id: 'link1',
      kind: 'fuse',
      model: 'resistance',
      ohm: between(0.0005, 0.002),
      from: 'feed0',
      to: 'link',
    },
    {
      id: 'link2',
      kind: 'conductor',
      model: 'resistance',
      ohm: between(0.002, 0.01),
      from: 'link',
      to: 'rear',
    },
    {
      id: 'tie',
      kind: 'conductor',
      model: 'resistance',
      ohm: between(0.001, 0.01),
      from: `feed${feeds}`,
      to: 'rear',
    },
    {
      id: 'strap',
      kind: 'joint',
      model: 'resistance',
      ohm: between(0.0005, 0.002),
      from: 'rear-ground',
      to: 'ground0',
    },
  );
}
