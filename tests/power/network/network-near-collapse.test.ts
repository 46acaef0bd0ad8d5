import { expect, test } from 'vitest';
import { solveNetwork } from '../../../lib/power/network/network.ts';
import { greatestLoadShare, scaleLoads } from './greatest-load.ts';
import { imbalanceA } from './ngspice.ts';
import { powerBalance } from './power-balance.ts';
import { randomNetwork, topologies } from './reference-networks.ts';

// Past 0.99 of the greatest load a voltage is so steep in the load that ngspice's tolerance shows in it; currents and
// power must still balance to the last microampere and microwatt (Kirchhoff's current law, Tellegen's theorem).
test.each(topologies)(
  'from 0.99 of the greatest load to one part in 100,000 below it all balances: %s',
  (topology) => {
    let solved = 0;
    for (let seed = 1; seed <= 24; seed += 1) {
      const network = randomNetwork(seed, topology);
      const greatest = greatestLoadShare(network);
      if (!Number.isFinite(greatest)) continue;
      for (const share of [0.99, 0.999, 0.9999, 0.99999]) {
        const loaded = scaleLoads(network, share * greatest);
        const result = solveNetwork(loaded);
        if (result.state !== 'solved' && result.state !== 'cut-out')
          throw new Error(`${topology} ${seed} at ${share}: ${result.state}`);
        solved += 1;
        const voltages = new Map(result.nodes.map(({ id, voltageV }) => [id, voltageV]));
        expect(imbalanceA(loaded, voltages), `${seed} at ${share}`).toBeLessThan(1e-6);
        const balance = powerBalance(loaded, result);
        const missingW = balance ? balance.sourceW - balance.loadW - balance.heatW : Number.NaN;
        expect(Math.abs(missingW), `${seed} at ${share}`).toBeLessThan(1e-6);
      }
    }
    expect(solved).toBeGreaterThan(60);
  },
);
