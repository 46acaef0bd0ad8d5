import { seeded } from '../../board/random.ts';
import type { Network, NetworkElement, PassiveKind } from '../../power/network/network-types.ts';

/**
 * A vehicle's network by chance, of a number of elements: a battery, feeds that branch, and for every device a lead,
 * a return and a load of constant power, light enough to be fed. The same seed gives the same network.
 */
export function benchNetwork(seed: number, elementCount: number): Network {
  const random = seeded(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const elements: NetworkElement[] = [
    {
      id: 'battery',
      kind: 'source',
      model: 'emf',
      emfV: 13.8,
      ohm: between(0.003, 0.006),
      from: 'feed0',
      to: 'ground',
    },
  ];
  const devices = Math.floor((elementCount - 1) / 4);
  // All devices together draw about 100 A whatever their number, so that every network can be fed.
  const powerW = 1400 / Math.max(1, devices);
  for (let k = 1; k <= devices; k += 1) {
    const up = Math.floor(random() * Math.min(k, 6));
    const [feed, plus, minus] = [`feed${k}`, `device${k}+`, `device${k}-`];
    elements.push(
      passive(`feed${k}`, 'fuse', `feed${up}`, feed, between(0.0002, 0.002)),
      passive(`lead${k}`, 'conductor', feed, plus, between(0.0005, 0.004)),
      passive(`return${k}`, 'conductor', minus, 'ground', between(0.0005, 0.003)),
      {
        id: `load${k}`,
        kind: 'load',
        model: 'power',
        from: plus,
        to: minus,
        powerW: powerW * between(0.5, 1.5),
      },
    );
  }
  for (let k = elements.length; k < elementCount; k += 1)
    elements.push(passive(`tie${k}`, 'joint', `feed${k % (devices + 1)}`, 'feed0', between(0.001, 0.01)));
  return { referenceNode: 'ground', elements: elements.filter(({ from, to }) => from !== to) };
}

function passive(id: string, kind: PassiveKind, from: string, to: string, ohm: number): NetworkElement {
  return { id, kind, model: 'resistance', from, to, ohm };
}
