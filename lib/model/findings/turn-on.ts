import type { FindingEntry } from './entry.ts';
import { commonPractice, partData } from './source.ts';

/** What switches what on, and what a contact carries. */
export const turnOnFindings = {
  'turn-on-missing': {
    asks: 'Remote turn-on reaches every device that needs it; automatic turn-on has a wired fallback.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'turn-on-switch': {
    asks: 'A switch that chooses how a device turns on stands as the links make it: automatic where no wire reaches its turn-on input, else waiting for the wire.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'turn-on-always-live': {
    asks: 'What turns a device on goes off: no turn-on input and no coil of a relay hangs on a battery for good.',
    levels: ['stop'],
    ...commonPractice,
  },
  'turn-on-overload': {
    asks: 'A turn-on output gives at least what all that it drives draws.',
    levels: ['stop', 'note'],
    ...partData,
  },
  'turn-on-ring': {
    asks: 'No devices wait for each other to turn on.',
    levels: ['stop'],
    source: "the parts' terminals",
  },
  'turn-on-drives-nothing': {
    asks: 'A turn-on output that is wired drives something.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'turn-on-limit-unknown': {
    asks: 'What a turn-on output can give is known.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'turn-on-load-unknown': {
    asks: 'What each device draws from its turn-on is known.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'turn-on-draw-assumed': {
    asks: 'What a device draws from its turn-on is told by its maker or measured, not assumed.',
    levels: ['note'],
    ...commonPractice,
  },
  'relay-without-suppression': {
    asks: 'A relay on a turn-on output has a suppression diode.',
    levels: ['caution'],
    ...commonPractice,
  },
  'turn-on-sequence': {
    asks: 'The processor turns on first and off last: amplifiers that play from it take their turn-on from it.',
    levels: ['caution'],
    ...commonPractice,
  },
  'isolator-not-by-engine': {
    asks: 'The coil of an isolating relay is fed while the engine runs, and not while it does not.',
    levels: ['stop', 'caution'],
    ...commonPractice,
  },
  'cranking-through-relay': {
    asks: 'The contact between two batteries carries its share of the cranking current by its short-time rating.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'relay-contact-over-current': {
    asks: 'The contact of a relay carries what flows through it, and the fuse before it protects it.',
    levels: ['stop', 'caution'],
    restsOnDraw: true,
    ...partData,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
