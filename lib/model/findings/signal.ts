import type { FindingEntry } from './entry.ts';
import { commonPractice, partData } from './source.ts';

/** What the source gives, and what the inputs make of it. */
export const signalFindings = {
  'fader-moves-bass': {
    asks: 'Bass is played by outputs that no fader moves.',
    levels: ['note'],
    ...commonPractice,
  },
  'bass-pair-chosen': {
    asks: 'Which pair of the source a subwoofer plays is written, where there are several.',
    levels: ['note'],
    ...commonPractice,
  },
  'bass-from-one-side': {
    asks: 'A subwoofer plays the bass of both sides, where the source gives each side by itself.',
    levels: ['caution'],
    ...commonPractice,
  },
  'output-order-assumed': {
    asks: 'What each output of a source carries is told by its name, or written.',
    levels: ['note'],
    ...commonPractice,
  },
  'pair-crossed': {
    asks: 'Speakers play the outputs of their own row and side, as the names of these or what is written of them tell; a subwoofer plays one pair.',
    levels: ['caution'],
    ...commonPractice,
  },
  'outputs-joined': {
    asks: 'No wire joins an output to an output of another device.',
    levels: ['stop'],
    ...partData,
  },
  'speaker-negative-to-common': {
    asks: 'The negative of a speaker output goes to its own speaker alone, never to the chassis or to a common negative.',
    levels: ['stop'],
    ...commonPractice,
  },
  'factory-source-unmeasured': {
    asks: 'A factory radio that feeds the system is measured channel by channel before the plan stands.',
    levels: ['note'],
    ...commonPractice,
  },
  'signal-below-sensitivity': {
    asks: 'The clean voltage of an output reaches what the input behind it needs for full output.',
    levels: ['note'],
    ...partData,
  },
  'chime-lost': {
    asks: 'No warning or chime of the vehicle is lost.',
    levels: ['stop'],
    ...commonPractice,
  },
  'digital-output-without-interface': {
    asks: 'A digital output reaches an analogue input through an interface alone.',
    levels: ['stop'],
    ...commonPractice,
  },
  'noise-cancelling-on': {
    asks: 'Active noise cancelling is off where its speakers are replaced.',
    levels: ['caution'],
    ...commonPractice,
  },
  'band-limited-output': {
    asks: 'Outputs that give a part of the band are summed before they feed the system.',
    levels: ['caution'],
    ...commonPractice,
  },
  'equalising-moves-with-level': {
    asks: 'Equalising that moves with the level is undone before the system.',
    levels: ['caution'],
    ...commonPractice,
  },
  'output-offset-unlikely': {
    asks: 'A line output has no direct-current offset; half the supply is that of a speaker output.',
    levels: ['caution'],
    ...commonPractice,
  },
  'load-sensing-output': {
    asks: 'An output that feels for its speaker sees a load.',
    levels: ['caution'],
    ...commonPractice,
  },
  'gain-behind-equalising': {
    asks: 'The equalising of a source is undone before the gains are set through it.',
    levels: ['note'],
    ...commonPractice,
  },
  'level-not-made': {
    asks: 'Speakers that are to play below the others can: a gain or the level of an output moves them and nothing else.',
    levels: ['stop'],
    ...partData,
  },
  'sides-swapped': {
    asks: 'The signal of the left side ends in speakers of the left side, that of the right in those of the right.',
    levels: ['caution'],
    ...commonPractice,
  },
  'source-polarity-reversed': {
    asks: 'An output of reversed polarity is turned over at its input.',
    levels: ['caution'],
    ...commonPractice,
  },
  'input-switch': {
    asks: 'A switch for inputs stands so that the inputs that are linked are heard.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'input-level-unknown': {
    asks: 'What arrives at an input, and what it takes, is known.',
    levels: ['note'],
    ...partData,
  },
  'input-overdriven': {
    asks: 'What arrives at an input is no more than it takes, and no speaker output goes into a line input.',
    levels: ['stop'],
    ...partData,
  },
  'input-underdriven': {
    asks: 'What arrives at an input brings it to full output with its gain fully up.',
    levels: ['note'],
    ...partData,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
