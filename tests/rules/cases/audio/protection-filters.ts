import { about, partIn } from '../../case.ts';
import { channel, filter, filtered } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const protectionFiltersCases = {
  // Common practice, no source: a small speaker without a high-pass stops.
  'small-speaker-without-high-pass': {
    fires: [
      {
        name: 'a tweeter without a filter',
        about: () => filtered('amp.1'),
        level: 'stop',
        subject: 'amp.1',
        says: /tweeter/,
        toDo: /^write a high-pass under filters: at dsp.OUT1, at or above/,
      },
      {
        name: 'behind parts of which none makes a high-pass',
        about: () =>
          about({
            content: (content) => {
              delete partIn(content, 'dsp', 'processor')['filter-orders'];
            },
            plan: (plan) => {
              channel(plan, 'amp.1').filters = [];
            },
          }),
        level: 'stop',
        subject: 'amp.1',
        toDo: /^no part on its path makes a high-pass: put in a processor or an amplifier with a high-pass, or a line lead with one in it \(filter: of its cable\); where the leaflet of two-channel, dsp or radio has a high-pass, write it into its part/,
      },
      {
        name: 'a low-pass and a subsonic filter are no high-pass',
        about: () => filtered('amp.1', filter('low-pass', 5000), filter('subsonic', 27)),
        level: 'stop',
        subject: 'amp.1',
      },
    ],
    quiet: [{ name: 'a subwoofer without one', about: () => about() }],
  },
  // The maker's lowest frequency.
  'high-pass-too-low': {
    fires: [
      {
        name: 'a tweeter from 80 Hz',
        about: () => filtered('amp.1', filter('high-pass', 80)),
        level: 'stop',
        subject: 'amp.1',
      },
      {
        name: 'a midrange below its range',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'tweeter', 'speaker').band = 'midrange';
            },
            plan: (plan) => {
              channel(plan, 'amp.1').filters = [filter('high-pass', 2000)];
            },
          }),
        level: 'caution',
        subject: 'amp.1',
      },
    ],
    quiet: [
      { name: 'just at its lowest frequency', about: () => filtered('amp.1', filter('high-pass', 2500)) },
      {
        name: 'the higher of two counts',
        about: () => filtered('amp.1', filter('high-pass', 80), filter('high-pass', 3000)),
      },
    ],
  },
  // Common practice, no source.
  'subwoofer-without-low-pass': {
    fires: [
      {
        name: 'a subsonic filter alone',
        about: () => filtered('amp.2', filter('subsonic', 27)),
        level: 'caution',
        subject: 'amp.2',
        path: '/devices/amp/filters',
        says: /drives sub without a low-pass/,
      },
      { name: 'no filter at all', about: () => filtered('amp.2'), level: 'caution', subject: 'amp.2' },
    ],
    quiet: [
      { name: 'a low-pass', about: () => filtered('amp.2', filter('low-pass', 80)) },
      { name: 'a tweeter', about: () => filtered('amp.1', filter('high-pass', 3000)) },
    ],
  },
  // The test tone for bass, 50 Hz, lies in the band of every subwoofer; common practice, no source.
  'subwoofer-high-passed': {
    fires: [
      {
        name: 'a high-pass of 80 Hz, where a low-pass was meant',
        about: () => filtered('amp.2', filter('high-pass', 80)),
        level: 'caution',
        subject: 'amp.2',
        says: /behind a high-pass at 80 Hz/,
      },
      {
        name: 'a subsonic filter just above 50 Hz',
        about: () => filtered('amp.2', filter('subsonic', 50.5), filter('low-pass', 80)),
        level: 'caution',
        subject: 'amp.2',
      },
    ],
    quiet: [
      { name: 'a subsonic filter of 50 Hz', about: () => filtered('amp.2', filter('subsonic', 50)) },
      { name: 'a high-pass of a tweeter', about: () => filtered('amp.1', filter('high-pass', 3000)) },
    ],
  },
} satisfies RuleCases;
