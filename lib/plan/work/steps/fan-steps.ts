import { minutesFor, type Step, step, type Work } from '../work.ts';

const vehicle = { place: 'vehicle', by: 'vehicle' } as const;

/** Air that a fan moves at least, rounded up: less would leave the space warmer than was counted on. */
const m3h = (airM3S: number): string => `${Math.ceil(airM3S * 3600 - 1e-6)} m3/h`;

/** A fan that the heat of a space counts on is there before anything is connected, on a supply and a fuse of its own. */
export function fanSteps(work: Work): Step[] {
  return work.fans.map(({ space, airM3S }) =>
    step(
      `fan-${space}`,
      [{ step: 'battery-off', why: 'no trim comes off and no wire is laid with the battery on' }],
      {
        layer: 'place',
        ...vehicle,
        text: `See that ${space} has a fan that moves ${m3h(airM3S)} or more, or fit one. Its part, its supply and its fuse are not planned here: a fuse of its own as its maker says, on with the system`,
        tools: ['screwdriver', 'trim tools'],
        minutes: minutesFor(work, 'mount-item'),
        acts: [`fan:${space}`],
        proof:
          'It is marked for that much air, its way in and its way out are free, and its wire has its own fuse',
      },
    ),
  );
}

/** With power on, each fan is proved to blow before the vehicle goes out. */
export function fanProofs(work: Work, after: string): Step[] {
  return work.fans.map(({ space }, index) =>
    step(
      `fan-blows-${space}`,
      [
        {
          step: index === 0 ? after : `fan-blows-${work.fans[index - 1]?.space ?? ''}`,
          why: 'it runs with the system',
        },
      ],
      {
        layer: 'test',
        ...vehicle,
        text: `With the system on, prove that the fan of ${space} blows the right way, and that it stops with the system`,
        tools: ['strip of paper'],
        minutes: minutesFor(work, 'take-reading'),
        acts: [`fan-blows:${space}`],
        proof: 'A strip of paper is drawn to the opening where air goes in',
      },
    ),
  );
}
