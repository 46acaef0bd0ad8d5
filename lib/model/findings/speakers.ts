import type { FindingEntry } from './entry.ts';
import { circuitLaws, commonPractice, defaultSource, partData } from './source.ts';

/** Loads, their wiring, filters and levels. */
export const speakerFindings = {
  'channel-shorted': {
    asks: 'The two outputs of a channel are not joined by a conductor.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'channels-joined': {
    asks: 'The speakers of a channel are on no other one.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'pair-not-bridged': {
    asks: 'A load between two channels hangs at the two terminals that its amplifier bridges.',
    levels: ['stop'],
    ...partData,
  },
  'coil-to-body': {
    asks: 'Both ends of a coil go to its amplifier, none to the body or a ground.',
    levels: ['stop'],
    ...commonPractice,
  },
  'coils-opposed': {
    asks: 'The coils of one cone push it the same way.',
    levels: ['stop'],
    ...circuitLaws,
  },
  'channel-without-speaker': {
    asks: 'A channel that is wired has a speaker.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'coil-shorted': {
    asks: 'No coil has both its ends at one point.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'coil-left-open': {
    asks: 'Every coil of a driven speaker is wired at both ends.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'wiring-not-series-parallel': {
    asks: 'The coils of a channel are in series, in parallel or mixed.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'coil-unknown': {
    asks: 'Each coil of a wiring is one of a speaker.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'coil-wired-twice': {
    asks: 'Each coil stands once in the wiring of its channel.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'coil-id-twice': {
    asks: 'Each coil has a name of its own.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'coil-load-unknown': {
    asks: 'The nominal load of each coil is a number above zero.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'group-too-small': {
    asks: 'A series or parallel group has at least two members.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'load-below-minimum': {
    asks: 'The load of a channel is at least the minimum of its amplifier in that mode, over the whole heard band where a filter in a lead lets a speaker in beside another.',
    levels: ['stop'],
    ...partData,
  },
  'load-unknown': {
    asks: 'The load of every channel that is wired is known.',
    levels: ['stop'],
    source: "Ohm's law; the parts' data",
  },
  'load-not-as-asked': {
    asks: 'A channel is wired to the load that the job asks for.',
    levels: ['stop'],
    ...circuitLaws,
  },
  'load-not-possible': {
    asks: 'The coils of a channel can be wired to the load that the job asks for.',
    levels: ['stop'],
    ...circuitLaws,
  },
  'too-many-wirings': {
    asks: 'The ways of wiring the coils of a channel can be listed.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'no-rated-power': {
    asks: 'An amplifier has a rated power in the mode that it is used in.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'rated-power-unclear': {
    asks: 'The rated powers of an amplifier are numbers above zero, one for each load.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'speaker-without-channel': {
    asks: 'Every speaker of the job is driven.',
    levels: ['stop'],
    ...commonPractice,
  },
  'polarity-reversed': {
    asks: 'A speaker is wired in normal polarity, unless a reversed one is meant.',
    levels: ['caution'],
    ...commonPractice,
  },
  'power-over-speaker': {
    asks: 'Where a channel can give more than its speaker may take for long, that is told.',
    levels: ['note'],
    ...partData,
  },
  'coils-joined-otherwise': {
    asks: 'Where coils are proposed in series or in parallel, and the other is allowed as well and gives {other-joining} times the power or a part of it as small, that is told.',
    levels: ['note'],
    ...defaultSource('other-joining'),
  },
  'speaker-wire-loss': {
    asks: 'The wire to a speaker loses at most {speaker-loss}.',
    levels: ['caution'],
    ...defaultSource('speaker-loss'),
  },
  'bass-lead-thin': {
    asks: 'Bass leads are 12 AWG for 4 to 2 ohm and 10 AWG below.',
    levels: ['caution'],
    ...commonPractice,
  },
  'small-speaker-without-high-pass': {
    asks: 'Every speaker but a subwoofer is behind a high-pass.',
    levels: ['stop'],
    ...commonPractice,
  },
  'high-pass-too-low': {
    asks: 'A high-pass is not below the lowest frequency that the maker of the speaker gives.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'ported-without-subsonic': {
    asks: 'A subwoofer in a ported enclosure is behind a subsonic filter.',
    levels: ['caution'],
    ...commonPractice,
  },
  'subsonic-off-tuning': {
    asks: 'A subsonic filter stands at {subsonic-from} to {subsonic-to} of the tuning of the box, 24 dB per octave.',
    levels: ['note'],
    ...commonPractice,
  },
  'subwoofer-without-low-pass': {
    asks: 'A subwoofer is behind a low-pass.',
    levels: ['caution'],
    ...commonPractice,
  },
  'subwoofer-high-passed': {
    asks: 'No high-pass takes its own band from a subwoofer.',
    levels: ['caution'],
    ...commonPractice,
  },
  'octaves-unplayed': {
    asks: 'Between the corners of the ways every octave is played by one of them.',
    levels: ['caution', 'note'],
    ...defaultSource('gap-level'),
  },
  'filter-order-not-made': {
    asks: 'A filter is of an order that its type is made in.',
    levels: ['stop'],
    source: 'the definition of the filter',
  },
  'filter-corner-unclear': {
    asks: 'The corner of a filter is a frequency above zero.',
    levels: ['stop'],
    source: 'the definition of the filter',
  },
  'filtered-twice': {
    asks: 'No path is filtered twice at one corner: after commissioning one device cuts, the other stands full or out of the way.',
    levels: ['caution'],
    ...commonPractice,
  },
  'filter-not-made': {
    asks: 'A device makes the filters that the job asks of it, by a control or a menu of its part, and leaves them in the path. One that it does not make is in no path.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'boost-unknown': {
    asks: 'How far a boost raises the level is known: the gain voltage allows for it.',
    levels: ['caution'],
    ...partData,
  },
  'subwoofer-misfits-box': {
    asks: 'A subwoofer fits its box: hole, depth and volume.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'crossover-cancels': {
    asks: 'Where two ways hand over to each other, they add.',
    levels: ['caution'],
    ...commonPractice,
  },
  'polarity-not-as-declared': {
    asks: 'A speaker that is mounted back to front, or meant to be reversed, is wired so.',
    levels: ['caution'],
    ...commonPractice,
  },
  'speaker-paths-differ': {
    asks: 'Speakers of one kind lose about the same in their wires.',
    levels: ['note'],
    ...commonPractice,
  },
  'full-scale-clips': {
    asks: 'Where the overlap of the test tone lets full-scale passages clip, that is told.',
    levels: ['note'],
    ...commonPractice,
  },
  'band-empty': {
    asks: 'The band of a channel has a test tone in it.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'tone-not-played': {
    asks: 'There is a test tone that the source gives and the path of a channel lets through.',
    levels: ['stop'],
    ...commonPractice,
  },
  'overlap-unclear': {
    asks: 'The overlap of the test tone is a level of nothing or more.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'gain-unclear': {
    asks: 'Load, power and voltages that a gain is set for are numbers above zero.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'delay-shared': {
    asks: 'Speakers on one output ask for one delay: an output has no second one.',
    levels: ['caution', 'note'],
    source: 'time of flight',
  },
  'pair-of-different-parts': {
    asks: 'What is called the left and the right one of a pair is of one part.',
    levels: ['caution'],
    ...commonPractice,
  },
  'pair-filtered-differently': {
    asks: 'The left and the right speaker of a pair are behind like filters.',
    levels: ['caution'],
    ...commonPractice,
  },
  'pair-levels-differ': {
    asks: 'The gains of the left and the right speaker of a pair bring them to one level.',
    levels: ['caution'],
    ...commonPractice,
  },
  'summed-inputs-differ': {
    asks: 'Inputs that are added for one channel are behind like filters.',
    levels: ['caution'],
    ...commonPractice,
  },
  'speaker-not-measured': {
    asks: 'The distance of each speaker from the listener is measured, so that its delay is known.',
    levels: ['note'],
    source: 'time of flight',
  },
  'distance-unclear': {
    asks: 'The distance of a speaker is a number above zero.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'speaker-twice': {
    asks: 'Each speaker that is delayed stands once.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'sample-rate-unclear': {
    asks: 'The sample rate of a processor is a number above zero.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'air-temperature-unlikely': {
    asks: 'The air that delays are worked out for has a temperature of a cabin.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
