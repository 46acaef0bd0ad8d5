import type { FindingEntry } from './entry.ts';
import { ampacityTable, commonPractice, defaultSource, partData } from './source.ts';

/** What goes into a port, and what is crimped on for it. */
export const endFindings = {
  'port-too-small': {
    asks: 'A conductor goes into the port at its end, or a reducer is on it.',
    levels: ['stop'],
    ...partData,
  },
  'port-shared': {
    asks: 'A clamp holds no more conductors than its maker allows, and a socket one plug: a Y-lead has one for all that begin at it; twin ferrules end at 2 x 16 mm2 and are not in DIN 46228-4.',
    levels: ['stop', 'caution'],
    ...partData,
  },
  'joint-off-size': {
    asks: 'A splice that joins two wires before a port is made for both: side by side in one barrel, or all together in a sleeve.',
    levels: ['stop'],
    ...commonPractice,
  },
  'joint-overloaded': {
    asks: 'The wire between a port and a joint carries what all wires beyond the joint draw.',
    levels: ['stop'],
    ...ampacityTable,
  },
  'port-too-large': {
    asks: 'A conductor is not too thin for its port.',
    levels: ['caution'],
    ...partData,
  },
  'port-ferrule': {
    asks: 'A ferrule is on where the maker of a port asks for one, and off where he refuses it.',
    levels: ['caution'],
    ...partData,
  },
  'port-refuses-conductor': {
    asks: 'An end can be made for its port as the part asks.',
    levels: ['stop'],
    source: "the parts' data",
  },
  'port-note': {
    asks: 'What a port asks of an end beside its preparation is told.',
    levels: ['note'],
    source: "the parts' data",
  },
  'strip-length-assumed': {
    asks: 'How far a wire is stripped is told by the maker of what goes on its end, or of its port.',
    levels: ['note'],
    ...commonPractice,
  },
  'terminal-not-in-catalogue': {
    asks: 'The catalogue has the lug, ferrule, contact or splice of each end.',
    levels: ['caution'],
    source: "the shop's catalogue",
  },
  'tab-not-told': {
    asks: 'The part of a speaker tells how wide each of its tabs is: a receptacle goes on one width alone.',
    levels: ['note'],
    ...partData,
  },
  'lead-not-told': {
    asks: 'The part of a device tells how thick the leads are that its maker supplies: a splice takes one range of sizes; where it does not, {lead-untold} AWG is reckoned.',
    levels: ['note'],
    ...defaultSource('lead-untold'),
  },
  'heat-shrink-none-fits': {
    asks: 'Some heat-shrink of the catalogue goes over each lug and closes on it.',
    levels: ['caution'],
    source: "the shop's catalogue",
  },
  'lugs-on-stud': {
    asks: 'At most four lugs are on one stud.',
    levels: ['caution'],
    ...defaultSource('lugs-on-stud'),
  },
  'lug-off-stud': {
    asks: 'The hole of a lug is that of its stud.',
    levels: ['caution'],
    ...partData,
  },
  'end-off-size': {
    asks: 'A ferrule or lug is made for its conductor: the next size up, never the nearest.',
    levels: ['caution'],
    ...commonPractice,
  },
  'copper-clad-in-set-screw': {
    asks: 'Copper-clad aluminium goes into a set screw only with a ferrule, and the screw is tightened again.',
    levels: ['stop', 'note'],
    ...commonPractice,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
