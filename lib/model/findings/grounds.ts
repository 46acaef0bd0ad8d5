import type { FindingEntry } from './entry.ts';
import { commonPractice, defaultSource } from './source.ts';

/** The way back: leads, points and what they bear. */
export const groundFindings = {
  'device-without-ground': {
    asks: 'Every device that draws current has its ground connected.',
    levels: ['stop'],
    ...commonPractice,
  },
  'battery-without-ground': {
    asks: 'The negative post of every battery of the job is connected.',
    levels: ['stop'],
    ...commonPractice,
  },
  'ground-on-restraint-fastener': {
    asks: 'No ground lead shares the fastener of a seat belt, seat frame, airbag or fuel line.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'ground-past-sensor': {
    asks: "With a sensor on the battery's negative post, grounds go to the body or to the vehicle side of the sensor.",
    levels: ['stop'],
    ...commonPractice,
  },
  'ground-under-feed': {
    asks: 'The ground of a device or board conducts at least as well as its feed, judged by conductance and not by gauge number.',
    levels: ['caution'],
    ...commonPractice,
  },
  'ground-lead-long': {
    asks: 'The lead from a board to its ground point is at most {ground-lead} long.',
    levels: ['caution'],
    ...defaultSource('ground-lead'),
  },
  'ground-areas-differ': {
    asks: 'All devices of a board go to one ground area.',
    levels: ['caution'],
    ...commonPractice,
  },
  'device-grounded-twice': {
    asks: 'A device goes to the body at one point.',
    levels: ['caution'],
    ...commonPractice,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
