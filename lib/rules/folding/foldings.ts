import type { FindingId } from '../../model/findings/index.ts';
import {
  type Bond,
  behindOpenEnd,
  channelOfFilter,
  conductorOfFuse,
  eachNamesTheOther,
  feedPassedBy,
  figureOfNetwork,
  groundBehindOpenEnd,
  groundOfDevice,
  isWired,
  lackOfFilter,
  namesCause,
  oneUnfed,
  otherEndOfLink,
  outputOfDevice,
  readingOfChannel,
  runOfFuse,
  runOfWire,
  sameCircuit,
  sameDevice,
  sameReel,
  sameSubject,
  sameTerminal,
  sameWire,
  stricterLimit,
  wholeNetwork,
  wireOfSubject,
} from './bonds.ts';
import { batteriesBehindWire, dropOfExcess, reelOfExcess } from './bonds-of-leads.ts';
import { boardToBeMoved, liftedByCause } from './bonds-of-places.ts';

/** Findings that only follow from a cause, where a bond holds between the two. */
export interface Folding {
  readonly follows: readonly FindingId[];
  readonly bond: Bond;
}

/** What a fuse of the wrong rating, and a conductor of the wrong size, only drag along. */
const ofRating: readonly Folding[] = [
  { follows: ['fuse-over-ceiling', 'fuse-over-conductor', 'fuse-over-holder'], bond: stricterLimit },
  { follows: ['fuse-not-in-stock'], bond: sameSubject },
  { follows: ['conductor-none-fits', 'conductor-under-need'], bond: conductorOfFuse },
  { follows: ['fuse-over-warm-conductor'], bond: sameSubject },
  { follows: ['edge-without-grommet', 'bundle-over-hole', 'bundle-over-covering'], bond: runOfFuse },
];

/** What is told of the ends and the size of a wire that goes to the wrong place. */
const ofWrongEnd: readonly FindingId[] = [
  'conductor-none-fits',
  'conductor-no-reel',
  'conductor-under-need',
  'conductor-without-fuse',
  'port-too-large',
  'port-too-small',
  'ground-lead-long',
  'heat-shrink-none-fits',
  'terminal-not-in-catalogue',
];

/** What is told of a supply that isn't there. */
const ofNoSupply: readonly FindingId[] = [
  'supply-not-live',
  'supply-collapse',
  'below-cut-out',
  'network-floating',
  'fuse-not-in-stock',
];

/** What is told of a network that is shorted, or whose source is the wrong way round. */
const ofShort: readonly FindingId[] = [
  'supply-collapse',
  'below-cut-out',
  'network-floating',
  'network-short-circuit',
  'drop-over-limit',
  'ground-drop',
  'joint-drop',
  'charge-lead-drop',
];

/**
 * Which findings only follow from which, and what must bind the two. One cause gives one finding: with it mended, what
 * is folded under it is gone too.
 */
export const foldings: Readonly<Partial<Record<FindingId, readonly Folding[]>>> = {
  'battery-reversed': [
    { follows: [...ofShort, 'live-end-on-ground', 'fuse-in-ground', ...ofNoSupply], bond: wholeNetwork },
    { follows: ['turn-on-missing'], bond: isWired },
  ],
  'live-end-on-ground': [
    { follows: ofShort, bond: wholeNetwork },
    { follows: ofNoSupply, bond: sameCircuit },
    { follows: ['device-without-supply', 'device-without-ground', 'terminal-unaccounted'], bond: sameDevice },
  ],
  'live-end-on-signal': [
    { follows: ['device-without-supply', 'port-refuses-conductor'], bond: sameDevice },
    { follows: ['fuse-not-in-stock'], bond: sameCircuit },
    // What has no business in the socket is no plug too many.
    { follows: [...ofWrongEnd, 'port-shared'], bond: sameSubject },
  ],
  'pair-crossed': [{ follows: ['sides-swapped'], bond: sameSubject }],
  'outputs-joined': [
    { follows: ['port-refuses-conductor'], bond: sameTerminal },
    { follows: ['terminal-unaccounted'], bond: sameDevice },
    { follows: ofWrongEnd, bond: sameSubject },
  ],
  'fuse-bypassed': [
    { follows: ['fuse-distance', 'conductor-without-fuse', 'conductor-none-fits'], bond: sameSubject },
    { follows: ['conductor-without-fuse'], bond: sameTerminal },
    { follows: ['fuse-distance'], bond: sameWire },
    { follows: ['terminal-unaccounted'], bond: sameSubject },
    { follows: ['device-without-supply'], bond: oneUnfed },
  ],
  'fuse-in-ground': [
    { follows: ofNoSupply, bond: sameCircuit },
    { follows: ofShort, bond: sameCircuit },
  ],
  'turn-on-always-live': [
    { follows: ['device-without-supply', 'port-refuses-conductor', 'turn-on-sequence'], bond: sameDevice },
    { follows: ['fuse-not-in-stock'], bond: sameCircuit },
    { follows: ofWrongEnd, bond: wireOfSubject },
    { follows: ['route-ends-elsewhere'], bond: runOfWire },
  ],
  'turn-on-missing': [
    { follows: ['terminal-unaccounted'], bond: sameSubject },
    { follows: ['terminal-unaccounted', 'turn-on-drives-nothing'], bond: otherEndOfLink },
    { follows: ofWrongEnd, bond: wireOfSubject },
    { follows: ['turn-on-sequence'], bond: sameDevice },
  ],
  'turn-on-limit-unknown': [{ follows: ['turn-on-overload'], bond: sameSubject }],
  'turn-on-load-unknown': [{ follows: ['turn-on-overload'], bond: sameSubject }],
  'device-without-supply': [
    { follows: ['terminal-unaccounted'], bond: sameSubject },
    { follows: ['terminal-unaccounted'], bond: otherEndOfLink },
    { follows: [...ofNoSupply, 'fuse-not-in-stock'], bond: sameDevice },
  ],
  'device-without-ground': [
    { follows: ['terminal-unaccounted'], bond: groundOfDevice },
    { follows: ['terminal-unaccounted'], bond: otherEndOfLink },
    { follows: ['network-floating', 'supply-collapse', 'below-cut-out'], bond: sameDevice },
  ],
  'fitted-source-not-linked': [
    { follows: ofNoSupply, bond: wholeNetwork },
    { follows: ['system-without-battery', 'charging-unknown'], bond: wholeNetwork },
    {
      follows: ['fuse-interrupting', 'as-built-differs', 'ground-drop', 'drop-over-limit'],
      bond: figureOfNetwork,
    },
  ],
  'battery-without-ground': [
    { follows: ['terminal-unaccounted'], bond: sameDevice },
    { follows: ['drop-over-limit', 'ground-drop', 'fuse-over-warm-conductor'], bond: figureOfNetwork },
  ],
  'speaker-without-channel': [
    { follows: ['terminal-unaccounted'], bond: sameDevice },
    { follows: ['terminal-unaccounted'], bond: otherEndOfLink },
  ],
  'pair-not-bridged': [
    { follows: ['pair-not-bridged'], bond: sameSubject },
    { follows: ['terminal-unaccounted'], bond: outputOfDevice },
    { follows: ['port-refuses-conductor'], bond: sameTerminal },
  ],
  'bass-lead-thin': [
    { follows: ['port-too-large', 'end-off-size'], bond: sameWire },
    { follows: ['speaker-wire-loss'], bond: sameSubject },
  ],
  // What the amplifier can't make on a channel anyway is not asked of it once that is mended.
  'subwoofer-high-passed': [{ follows: ['filter-not-made'], bond: namesCause }],
  'filter-not-made': [
    { follows: ['pair-filtered-differently'], bond: channelOfFilter },
    {
      follows: ['small-speaker-without-high-pass', 'subwoofer-without-low-pass', 'ported-without-subsonic'],
      bond: lackOfFilter,
    },
  ],
  'coil-to-body': [
    { follows: ['terminal-unaccounted'], bond: sameTerminal },
    { follows: ofWrongEnd, bond: wireOfSubject },
    { follows: ['as-built-unknown', 'as-built-differs'], bond: readingOfChannel },
  ],
  'terminal-unaccounted': [
    { follows: ['terminal-unaccounted'], bond: otherEndOfLink },
    // What no source reaches draws nothing: its fuses and conductors can't be chosen.
    { follows: [...ofNoSupply, 'turn-on-missing', 'conductor-none-fits'], bond: behindOpenEnd },
    { follows: ['network-floating', 'supply-collapse', 'below-cut-out'], bond: groundBehindOpenEnd },
  ],
  'conductor-without-fuse': [
    { follows: ['terminal-unaccounted'], bond: feedPassedBy },
    { follows: ['fuse-distance'], bond: sameWire },
    { follows: ['fuse-interrupting'], bond: batteriesBehindWire },
    { follows: ['heat-shrink-none-fits', 'terminal-not-in-catalogue'], bond: sameSubject },
  ],
  'port-refuses-conductor': [{ follows: ['port-refuses-conductor'], bond: sameTerminal }],
  'fuse-over-ceiling': ofRating,
  'fuse-over-conductor': ofRating,
  'fuse-over-holder': ofRating,
  'fuse-over-need': [
    ...ofRating,
    { follows: ['conductor-none-fits', 'conductor-under-need'], bond: sameSubject },
    { follows: ['distribution-over-current'], bond: namesCause },
  ],
  'fuse-not-made': [{ follows: ['fuse-not-in-stock', 'fuse-under-load'], bond: sameSubject }, ...ofRating],
  'fuse-without-rating': ofRating,
  'insulation-at-ambient': [
    { follows: ['insulation-at-ambient', 'insulation-unmarked'], bond: sameReel },
    { follows: ['conductor-none-fits', 'fuse-over-conductor', 'conductor-under-need'], bond: sameReel },
  ],
  // Which sheet does hangs on the fixings that go through it.
  'fixing-too-short': [{ follows: ['no-sheet-for-board'], bond: eachNamesTheOther }],
  'fixing-too-long': [{ follows: ['no-sheet-for-board'], bond: eachNamesTheOther }],
  'hole-off-board': [{ follows: ['narrow-web'], bond: sameSubject }],
  'held-by-trim': [
    { follows: ['board-not-held'], bond: sameSubject },
    { follows: ['obstacle-in-the-way', 'space-too-small'], bond: boardToBeMoved },
  ],
  'obstacle-in-the-way': [{ follows: ['obstacle-in-the-way'], bond: liftedByCause }],
  'ground-lead-long': [
    { follows: ['stock-short'], bond: reelOfExcess },
    { follows: ['ground-drop'], bond: dropOfExcess },
  ],
  'stock-short': [{ follows: ['conductor-not-on-shelf'], bond: sameReel }],
  'load-below-minimum': [
    { follows: ['bass-lead-thin', 'control-final-unknown', 'speaker-wire-loss'], bond: sameDevice },
  ],
};
