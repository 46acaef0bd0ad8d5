import type { BuildPlan } from '../../../../lib/model/plan/index.ts';
import { about, aboutPlan } from '../../case.ts';
import { wire } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

const coloured = (id: string, colour: string | null) => () =>
  aboutPlan((plan) => {
    wire(plan, id).colour = colour;
  });

const pair = (plus: string | null, minus: string | null) => () =>
  aboutPlan((plan: BuildPlan) => {
    wire(plan, 'speaker-1.+').colour = plus;
    wire(plan, 'speaker-1.-').colour = minus;
  });

const twoPairs = (first: string, second: string) => () =>
  aboutPlan((plan: BuildPlan) => {
    for (const [id, colour] of [
      ['speaker-1', first],
      ['speaker-2', second],
    ] as const) {
      wire(plan, `${id}.+`).colour = colour;
      wire(plan, `${id}.-`).colour = `${colour}/BK`;
    }
  });

/** Common practice, no source. The letters of the colours are those of IEC 60757. */
export const colourCases = {
  'colour-misleads': {
    fires: [
      {
        name: 'a red ground',
        about: coloured('board-ground', 'RD'),
        level: 'caution',
        subject: 'board-ground',
        says: /red is a feed/,
      },
      {
        name: 'a striped red ground',
        about: coloured('board-ground', 'RD/BK'),
        level: 'caution',
        subject: 'board-ground',
      },
      {
        name: 'a black feed',
        about: coloured('amp-feed', 'BK'),
        level: 'caution',
        subject: 'amp-feed',
        says: /black is ground/,
      },
      { name: 'a brown feed', about: coloured('main', 'BN'), level: 'caution', subject: 'main' },
      {
        name: 'a yellow turn-on',
        about: coloured('amp-rem', 'YE'),
        level: 'caution',
        subject: 'amp-rem',
        says: /restraint/,
      },
      {
        name: 'an orange speaker lead',
        about: coloured('speaker-1.+', 'OG'),
        level: 'caution',
        subject: 'speaker-1.+',
        says: /high voltage/,
      },
      {
        name: 'a ground in green and yellow',
        about: coloured('board-ground', 'GN/YE'),
        level: 'caution',
        subject: 'board-ground',
        says: /protective earth/,
      },
    ],
    quiet: [
      { name: 'as it came', about: () => about() },
      { name: 'a black ground', about: coloured('board-ground', 'BK') },
      { name: 'a red feed with a black stripe', about: coloured('amp-feed', 'RD/BK') },
      { name: 'a green speaker lead', about: coloured('speaker-1.+', 'GN') },
      { name: 'a white lead with a yellow stripe', about: coloured('speaker-1.+', 'WH/YE') },
      { name: 'no colour known', about: coloured('board-ground', null) },
      { name: 'an orange lead of the vehicle itself', about: coloured('vehicle.charge', 'OG') },
    ],
  },
  'pair-colours-wrong': {
    fires: [
      {
        name: 'the stripe on plus',
        about: pair('WH/BK', 'WH'),
        level: 'caution',
        subject: 'speaker-1',
        says: /the stripe is minus/,
      },
      {
        name: 'both alike',
        about: pair('GY', 'GY'),
        level: 'caution',
        subject: 'speaker-1',
        says: /can't be told apart/,
      },
    ],
    quiet: [
      { name: 'the stripe on minus', about: pair('WH', 'WH/BK') },
      { name: 'two colours that are no pair', about: pair('GN', 'VT') },
      { name: 'one not known', about: pair('WH', null) },
    ],
  },
  'pairs-alike': {
    fires: [
      {
        name: 'two pairs in white at one amplifier',
        about: twoPairs('WH', 'WH'),
        level: 'note',
        subject: 'speaker-1',
        says: /speaker-1 and speaker-2 are both WH, WH\/BK at amp: their labels alone tell them apart/,
        toDo: /label both ends/,
      },
    ],
    quiet: [{ name: 'in two colours', about: twoPairs('WH', 'GY') }],
  },
  'reel-for-other-use': {
    fires: [
      {
        name: 'a ground from a reel for feeds',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(wire(plan, 'board-ground'), { part: 'clad', colour: 'WH' });
          }),
        level: 'note',
        subject: 'board-ground',
        says: /the reel clad is for power/,
      },
    ],
    quiet: [{ name: 'each from a reel for it', about: () => about() }],
  },
} satisfies RuleCases;
