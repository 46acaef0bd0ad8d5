import { about, partIn } from '../../case.ts';
import { channel, filter, filtered } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

export const subsonicFiltersCases = {
  // Common practice, no source: a ported enclosure without a subsonic filter is a caution.
  'ported-without-subsonic': {
    fires: [
      {
        name: 'no subsonic filter',
        about: () => filtered('amp.2', filter('low-pass', 80)),
        level: 'caution',
        subject: 'amp.2',
        says: /ported/,
      },
      {
        // 36 Hz: 17 Hz are less than half of it.
        name: 'one at the far stop of its knob, an octave below the tuning',
        about: () => filtered('amp.2', filter('subsonic', 17)),
        level: 'caution',
        subject: 'amp.2',
        says: /at 17 Hz, too low/,
      },
    ],
    quiet: [
      { name: 'a subsonic filter', about: () => about() },
      { name: 'one at half of the tuning', about: () => filtered('amp.2', filter('subsonic', 18)) },
      {
        name: 'a sealed enclosure',
        about: () =>
          about({
            content: (content) => {
              partIn(content, 'vented', 'enclosure').loading = 'sealed';
            },
            plan: (plan) => {
              channel(plan, 'amp.2').filters = [];
            },
          }),
      },
    ],
  },
  // Common practice, no source: 0.7 to 0.8 of tuning, 24 dB per octave. 36 Hz: 25.2 to 28.8 Hz.
  'subsonic-off-tuning': {
    fires: [
      {
        name: '20 Hz at a tuning of 36 Hz',
        about: () => filtered('amp.2', filter('subsonic', 20)),
        level: 'note',
        subject: 'amp.2',
      },
      {
        name: '12 dB per octave',
        about: () => filtered('amp.2', filter('subsonic', 27, 2)),
        level: 'note',
        subject: 'amp.2',
        says: /12 dB/,
      },
    ],
    quiet: [
      { name: '25.2 Hz', about: () => filtered('amp.2', filter('subsonic', 25.2)) },
      {
        name: 'one too low to guard is told as missing',
        about: () => filtered('amp.2', filter('subsonic', 17)),
      },
      { name: '28.8 Hz', about: () => filtered('amp.2', filter('subsonic', 28.8)) },
    ],
  },
} satisfies RuleCases;
