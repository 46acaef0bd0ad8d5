import type { FindingEntry } from './entry.ts';
import { accounting, circuitLaws, commonPractice, defaultSource, partData } from './source.ts';

/** Sources, what the network gives at each operating point, charging and standing. */
export const supplyFindings = {
  'part-not-for-system': {
    asks: 'Every part stands the voltage of the system that it hangs on; of what says nothing a 12 V part is assumed.',
    levels: ['stop'],
    ...partData,
  },
  'fuse-under-system-voltage': {
    asks: 'The rated voltage of every fuse is at least the highest of its system.',
    levels: ['stop'],
    ...partData,
  },
  'batteries-in-series': {
    asks: 'Batteries in series are written as one battery with the voltage of both.',
    levels: ['stop'],
    ...accounting,
  },
  'fitted-source-not-linked': {
    asks: 'Both posts of every battery and alternator that the vehicle has are linked.',
    levels: ['stop'],
    ...accounting,
  },
  'battery-reversed': {
    asks: 'The positive post of a battery goes to feeds and its negative post to ground.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'live-end-on-ground': {
    asks: 'No conductor joins what is live to ground: that is a short, or a device the wrong way round.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'supply-not-live': {
    asks: 'The positive supply terminal of every device of the job is reached from a battery.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'live-end-on-signal': {
    asks: 'No conductor leads a supply to a signal, speaker or control terminal.',
    levels: ['stop'],
    source: "Kirchhoff's laws; the parts' data",
  },
  'network-short-circuit': {
    asks: 'No link joins the two poles of a source.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-floating': {
    asks: 'Every device and every source has its way to ground, and every feed its source.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-zero-resistance-loop': {
    asks: 'No loop of the network is without resistance: how its current divides can be told.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-stiff-sources-in-parallel': {
    asks: 'Sources side by side have their internal resistance written.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-converter-impossible': {
    asks: 'A charger has a current limit, and takes at least what it gives.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-joined-to-itself': {
    asks: 'No link or part of a device joins a terminal to itself.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-unknown-node': {
    asks: 'Both ends of each element of the network are wired.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-duplicate-id': {
    asks: 'Each element of the network has a name of its own.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-not-a-number': {
    asks: 'Each value that the network is computed from is a number.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'network-negative-value': {
    asks: 'No resistance, current or power of the network is below zero.',
    levels: ['stop'],
    source: "Kirchhoff's and Ohm's laws",
  },
  'supply-collapse': {
    asks: 'At every operating point the supply feeds all devices: the network has a solution.',
    levels: ['stop'],
    restsOnDraw: true,
    ...circuitLaws,
  },
  'below-cut-out': {
    asks: 'The voltage at every device stays above its low-voltage cut-out.',
    levels: ['stop'],
    restsOnDraw: true,
    ...defaultSource('cut-out'),
  },
  'drop-over-limit': {
    asks: 'Feed and return together drop at most {drop-limit} at rated power.',
    levels: ['caution'],
    restsOnDraw: true,
    ...defaultSource('drop-limit'),
  },
  'grown-for-drop': {
    asks: 'A conductor that is larger than its fuse asks, for the drop alone, is told with what it would lose otherwise.',
    levels: ['note'],
    restsOnDraw: true,
    ...defaultSource('drop-limit'),
  },
  'ground-drop': {
    asks: 'The ground side of a device drops at most {ground-drop-limit} at rated power; {ground-drop-good} is good.',
    levels: ['caution', 'note'],
    restsOnDraw: true,
    ...defaultSource('ground-drop-limit'),
  },
  'joint-drop': {
    asks: 'No joint drops more than {joint-drop-limit} at rated power.',
    levels: ['caution'],
    restsOnDraw: true,
    ...defaultSource('joint-drop-limit'),
  },
  'charge-lead-drop': {
    asks: 'Between alternator and battery at most {charge-lead-drop} is lost.',
    levels: ['caution'],
    restsOnDraw: true,
    ...defaultSource('charge-lead-drop'),
  },
  'battery-in-wrong-zone': {
    asks: 'No flooded battery is in the cabin without a sealed vented box, and no lithium battery in the engine bay.',
    levels: ['stop'],
    ...commonPractice,
  },
  'battery-chemistries-mixed': {
    asks: 'Batteries of different chemistry are joined only through a charger.',
    levels: ['stop'],
    ...commonPractice,
  },
  'charger-signal-open': {
    asks: 'A charger is told that the engine runs, and senses the battery that it charges, where it has terminals for that.',
    levels: ['caution'],
    ...commonPractice,
  },
  'charging-short': {
    asks: 'Vehicle and average audio take at most {charging-share} of the hot output of the alternator; above all of it at cruise the battery runs flat.',
    levels: ['stop', 'caution'],
    restsOnDraw: true,
    ...defaultSource('charging-share'),
  },
  'reserve-leaves-no-start': {
    asks: 'The reserve of the battery that starts the engine ends early enough for that.',
    levels: ['caution'],
    ...defaultSource('reserve-end'),
  },
  'charging-unknown': {
    asks: 'What the charging of the vehicle is balanced from is known.',
    levels: ['caution'],
    source: "the vehicle's data",
  },
  'vehicle-load-assumed': {
    asks: 'The load of the vehicle itself is measured.',
    levels: ['note'],
    ...defaultSource('vehicle-load'),
  },
  'charging-voltage-varies': {
    asks: 'Where the vehicle lets its charging voltage vary, currents and sizes go by the low end.',
    levels: ['note'],
    ...defaultSource('voltage-variable'),
  },
  'charging-voltage-unusual': {
    asks: 'An alternator is set to a voltage that a sound system charges at.',
    levels: ['caution'],
    ...defaultSource('check-in-charging-most'),
  },
  'key-off-over-limit': {
    asks: 'With the key off the added devices draw at most {key-off-draw} together.',
    levels: ['caution'],
    ...defaultSource('key-off-draw'),
  },
  'key-off-not-told': {
    asks: 'Every added device tells what it draws with the key off.',
    levels: ['note'],
    ...partData,
  },
  'high-voltage-vehicle': {
    asks: "In a hybrid or electric vehicle only the 12 V side is used, its converter's ampere limit as the source, and orange cable is not touched.",
    levels: ['caution'],
    ...commonPractice,
  },
  'starter-battery-unknown': {
    asks: 'One battery of a vehicle with an engine says its cold-cranking current: by it a starter battery is known.',
    levels: ['caution'],
    ...commonPractice,
  },
  'system-without-battery': {
    asks: 'A battery stands in the system: it steadies the alternator, and carries the load with the engine off.',
    levels: ['stop'],
    ...commonPractice,
  },
} as const satisfies Readonly<Record<string, FindingEntry>>;
