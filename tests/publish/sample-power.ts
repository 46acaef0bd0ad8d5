import type { BuildPlan } from '../../lib/model/plan/index.ts';

const size = { label: '4 AWG', awg: '4', areaMm2: 21.15 };

/** The feed, signal and speakers of the sample plan. */
export function samplePower(): Pick<BuildPlan, 'power' | 'audio'> {
  return {
    power: {
      points: [
        {
          name: 'rated',
          title: 'Rated power, engine at speed',
          state: 'solved',
          referenceNode: 'battery.-',
          residualA: 1e-12,
          nodes: [{ id: 'amp-front.B+', voltageV: 13.9 }],
          elements: [
            {
              id: 'p1',
              of: 'p1',
              kind: 'conductor',
              from: 'main-fuse.OUT',
              to: 'amp-front.B+',
              model: 'resistance',
              ohm: 0.004,
              currentA: 41.2,
              dropV: 0.165,
              heatW: 6.8,
            },
            {
              id: 'amp-front',
              of: 'amp-front',
              kind: 'load',
              from: 'amp-front.B+',
              to: 'amp-front.GND',
              model: 'power',
              powerW: 570,
              cutoutV: 10.5,
              currentA: 41.2,
              dropV: 13.84,
            },
          ],
        },
      ],
      drops: [
        {
          point: 'rated',
          item: 'amp-front',
          source: 'battery',
          voltageV: 13.84,
          feedDropV: 0.18,
          groundDropV: 0.06,
          share: 0.017,
        },
      ],
      turnOn: [
        {
          source: 'processor.REM',
          loads: [{ item: 'amp-front', currentA: 0.02 }],
          sumA: 0.02,
          limitA: 0.3,
          within: true,
        },
      ],
      conductors: [
        {
          id: 'p1',
          from: 'main-fuse.OUT',
          to: 'amp-front.B+',
          role: 'power',
          size,
          material: 'copper',
          insulationC: 105,
          lengthM: 4.8,
          ampacityA: 97.6,
          cautionA: 60,
          limits: [
            {
              what: 'ampacity',
              zone: 'engine-bay',
              value: 60,
              limit: 97.6,
              unit: 'A',
              level: 'stop',
              citation: '33 CFR 183.425, Table 5',
            },
          ],
          fuses: ['main-fuse'],
          chosen: 'computed',
          fed: true,
          neededA: 60,
          reason: 'smallest size in stock that covers 60 A and drops less than 3 %',
        },
      ],
      fuses: [
        {
          id: 'main-fuse',
          item: 'main-fuse',
          way: '',
          form: 'bolt-in-30mm',
          ratingA: 60,
          part: 'fuse-60',
          interruptA: 2000,
          from: 'battery.+',
          to: 'main-fuse.OUT',
          source: 'battery',
          distanceM: 0.508,
          protects: ['p1'],
          ratedA: 41.2,
          ceilingA: 60,
          leastAmpacityA: 97.6,
          stockQuantity: 4,
          chosen: 'computed',
          needsInterruptA: 1500,
          holderA: 80,
          loads: ['amp-front'],
          reason: '41.2 A x 1.25, next made rating',
          alternatives: [
            {
              form: 'maxi-blade',
              ratingA: 60,
              part: null,
              stockQuantity: 0,
              parts: ['holder-maxi'],
              areaM2: 0.002,
              note: 'asks for another holder',
            },
          ],
        },
      ],
      charging: [
        {
          name: 'hot idle',
          alternatorA: 42,
          vehicleA: 50,
          averageA: 9.4,
          marginA: -17.4,
          reserveMinutes: 95,
        },
      ],
      loads: [{ item: 'amp-front', fuseA: 60, ratedA: 41.2, musicA: 9.4, idleA: 1.2, powerW: 300 }],
    },
    audio: {
      channels: [
        {
          id: 'amp-front.1',
          amplifier: 'amp-front',
          positive: 'amp-front.CH1+',
          negative: 'amp-front.CH1-',
          loadOhm: 4,
          minimumOhm: 2,
          dcResistanceOhm: { fromOhm: 3, toOhm: 3.4 },
          powerW: 75,
          gainVoltageV: 17.32,
          toneHz: 1000,
          filters: [
            { where: 'amp-front.IN1', pass: 'high-pass', type: 'linkwitz-riley', order: 4, cornerHz: 80 },
          ],
          speakers: ['front-left'],
          wiring: 'one coil',
          wireLossDb: 0.12,
        },
      ],
      speakers: [
        {
          id: 'front-left',
          delayMs: 1.48,
          polarity: 'normal',
          distanceM: 0.9,
          channel: 'amp-front.1',
          powerW: 75,
        },
      ],
    },
  };
}
