import type { FindingEntry } from './entry.ts';
import { ampacityTable, circuitLaws, commonPractice, defaultSource, partData, shopStock } from './source.ts';

/** Where what a short drives, and what a fuse makes of it, come from. */
const shortSource =
  "Ohm's law over the sized conductors, prospective current as IEC 60269 defines it; what no maker states is common practice or from memory";

/** What keeps a short from burning: fuses, where they stand and what they protect. */
export const protectionFindings = {
  'conductor-without-fuse': {
    asks: 'Every conductor that a source can feed is protected by a fuse, unless the source limits its own current.',
    levels: ['stop'],
    ...commonPractice,
  },
  'tap-without-fuse': {
    asks: "A tap in the vehicle's own wiring has a fuse of its own before anything that it feeds.",
    levels: ['stop'],
    ...commonPractice,
  },
  'fuse-distance': {
    asks: 'A fuse stands near every source that reaches it without another fuse, measured along the conductor: {fuse-distance-good} is good, {fuse-distance-loomed} in loom, {fuse-distance-sheathed} sheathed all the way.',
    levels: ['stop', 'caution'],
    ...defaultSource('fuse-distance-sheathed'),
  },
  'cranking-through-fuse': {
    asks: "A fuse between two batteries carries its share of the cranking current for its seconds, by its maker's time-current data.",
    levels: ['caution'],
    ...circuitLaws,
  },
  'fuse-bypassed': {
    asks: 'Nothing but the fuse itself joins its two ends.',
    levels: ['stop'],
    ...circuitLaws,
  },
  'fuse-in-ground': {
    asks: 'No fuse stands in a ground: a fuse belongs into the feed.',
    levels: ['stop'],
    ...commonPractice,
  },
  'fuse-over-conductor': {
    asks: 'A fuse is at most 100 % of the ampacity of every conductor that it protects.',
    levels: ['stop'],
    ...ampacityTable,
  },
  'turn-on-wire-under-fuse': {
    asks: 'A turn-on wire whose size is given carries what the fuse before it lets through.',
    levels: ['stop'],
    source: '33 CFR 183.425, Table 5; fuse ceilings under 18 AWG: common practice, no source',
  },
  'fuse-over-warm-conductor': {
    asks: 'The fuse also keeps below the ampacity at the true ambient of the engine bay, under loom and in a bundle.',
    levels: ['caution'],
    ...commonPractice,
  },
  'fuse-without-rating': {
    asks: 'Every fuse has a rating that is lawful: made, at most the ceiling of a device without fuses of its own, at most what it protects.',
    levels: ['stop'],
    restsOnDraw: true,
    ...commonPractice,
  },
  'fuse-over-ceiling': {
    asks: 'A fuse before a device is at most what its maker allows before it, or states for one that has none of its own; with fuses aboard and nothing stated the cable alone bounds it.',
    levels: ['stop'],
    ...partData,
  },
  'fuse-under-maker': {
    asks: 'The fuse of one device is not far below what its maker states.',
    levels: ['caution'],
    ...defaultSource('fuse-under-maker'),
  },
  'own-fuse-under-draw': {
    asks: 'The fuses in a device carry what it is reckoned to draw at rated power.',
    levels: ['caution'],
    restsOnDraw: true,
    ...partData,
  },
  'fuse-over-need': {
    asks: 'A fuse whose rating is written is not far above what it feeds: all behind it must carry what it lets through.',
    levels: ['stop', 'caution'],
    restsOnDraw: true,
    ...defaultSource('fuse-over-need'),
  },
  'fuse-not-made': {
    asks: 'The rating of a fuse is made in its form.',
    levels: ['stop'],
    source: 'ISO 8820-3, ISO 8820-5 and trade practice',
  },
  'fuse-over-holder': {
    asks: 'A holder carries no larger fuse than it is made for.',
    levels: ['stop'],
    ...partData,
  },
  'fuse-not-in-stock': {
    asks: 'A fuse is on the shelf; where it is not, the lawful alternatives are told.',
    levels: ['caution'],
    ...shopStock,
  },
  'fuse-under-load': {
    asks: 'A continuous load is at most {fuse-continuous} of its fuse.',
    levels: ['caution', 'note'],
    restsOnDraw: true,
    ...defaultSource('fuse-continuous'),
  },
  'fuses-over-ceiling': {
    asks: 'Fuses side by side before a device without fuses of its own let through together at most what its maker allows.',
    levels: ['stop'],
    ...partData,
  },
  'vehicle-fuse-unknown': {
    asks: 'A fuse that the vehicle came with, and that a conductor of the job hangs behind, has its rating read off.',
    levels: ['stop'],
    source: 'the fuse that is fitted, as read off',
  },
  'fuse-order': {
    asks: 'A fuse is not above the fuse that feeds it; where several feed it, not above the least of them without being told.',
    levels: ['caution', 'note'],
    ...commonPractice,
  },
  'fuses-over-feeder': {
    asks: 'Where the fuses of the devices add to more than the fuse of their feeder, that is told, with the ways out.',
    levels: ['note'],
    ...commonPractice,
  },
  'distribution-over-current': {
    asks: 'A distribution part, fused or plain, carries what flows through it, and the fuse before it protects it.',
    levels: ['stop', 'caution'],
    restsOnDraw: true,
    ...partData,
  },
  'fuse-interrupting': {
    asks: 'The first fuse behind a battery can interrupt what all sources drive into a short; behind lithium both makers say so.',
    levels: ['stop', 'caution'],
    source: shortSource,
    mark: 'mem',
  },
  'fuse-interrupting-downstream': {
    asks: 'A fuse further down the line can interrupt the fault current that the conductors let through to it.',
    levels: ['caution', 'note'],
    source: shortSource,
    mark: 'mem',
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
