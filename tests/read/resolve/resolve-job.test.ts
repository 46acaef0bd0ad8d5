import { describe, test } from 'vitest';
import {
  expectProblem,
  inJob,
  type ProblemCase,
  partsFile,
  vehicleFile,
  withBoard,
} from '../problem-case.ts';

const disagreements: readonly ProblemCase[] = [
  {
    name: 'a pair joined to one terminal',
    changes: [inJob('speaker: { from: amp.CH1, to: sub.C1,', 'speaker: ^{ from: amp.CH1, to: sub.C1+,')],
    says: /amp\.CH1 is a pair of terminals, but sub\.C1\+ is one terminal/,
    remedy: /amp\.CH1\+ or amp\.CH1-/,
  },
  {
    name: 'one terminal joined to a pair',
    changes: [inJob('speaker: { from: amp.CH1, to: sub.C1,', 'speaker: ^{ from: amp.CH1-, to: sub.C1,')],
    says: /sub\.C1 is a pair of terminals, but amp\.CH1- is one terminal/,
    remedy: /sub\.C1\+ or sub\.C1-/,
  },
  {
    name: 'a conductor of a cable taken twice',
    changes: [
      inJob(
        '  speaker:',
        '  twice: { from: radio.OUT1, to: amp.IN1, cable: lead, conductors: ^[left] }\n  speaker:',
      ),
    ],
    says: /conductor left of lead is taken by signal already/,
    remedy: /free conductor/,
  },
  {
    name: 'two conductors for one terminal',
    changes: [inJob('conductors: [left]', 'conductors: ^[left, right]')],
    says: /signal joins one terminal, but names 2 conductors/,
  },
  {
    name: 'a cable without its conductors',
    changes: [
      inJob(
        'signal: { from: radio.OUT1, to: amp.IN1, cable: lead, conductors: [left] }',
        'signal: ^{ from: radio.OUT1, to: amp.IN1, cable: lead }',
      ),
    ],
    says: /takes conductors of lead, but does not say which/,
    remedy: /conductors:/,
  },
  {
    name: 'conductors without a cable',
    changes: [inJob('to: amp.REM }', 'to: amp.REM, conductors: ^[left] }')],
    says: /turn-on names conductors, but no cable/,
    remedy: /cable:/,
  },
  {
    name: 'a conductor of a cable with a size of its own',
    changes: [inJob('signal: { from: radio.OUT1,', 'signal: ^{ size: 18 AWG, from: radio.OUT1,')],
    says: /so it has no wire, size or colour of its own/,
    remedy: /keep cable: or wire:/,
  },
  {
    name: 'a link in two runs',
    changes: [inJob('links: [turn-on]', 'links: [turn-on, ^feed]')],
    says: /feed goes by the run power already/,
    remedy: /one run/,
  },
  {
    name: 'a device whose id the vehicle has',
    changes: [inJob('  sub: {', '  ^battery: { part: battery-a, in: boot }\n  sub: {')],
    says: /the vehicle has a device "battery" already/,
    remedy: /another id/,
  },
  {
    name: 'a device that is called like the body',
    changes: [inJob('  sub: {', '  ^body: { part: battery-a, in: boot }\n  sub: {')],
    says: /the vehicle has a device "body" already/,
  },
  {
    name: 'a link from a terminal to itself',
    changes: [inJob('ground: { from: amp.GND, to: body.cargo,', 'ground: ^{ from: amp.GND, to: amp.GND,')],
    says: /ground joins amp\.GND to itself/,
    remedy: /other end/,
  },
  {
    name: 'a link of the vehicle from a terminal to itself',
    changes: [
      [vehicleFile, 'from: alternator.B+, to: battery.POS', 'from: alternator.B+, to: ^alternator.B+'],
    ],
    says: /charge joins alternator\.B\+ to itself/,
  },
  {
    name: 'a link that is called like a fuse holder',
    changes: [
      inJob('  feed: { from: main-fuse.OUT,', '  ^main-fuse: { from: main-fuse.OUT,'),
      inJob('links: [feed]', 'links: [main-fuse]'),
    ],
    says: /"main-fuse" is a device already: an id names one thing/,
    remedy: /another id/,
  },
  {
    name: 'a link that is called like the body',
    changes: [inJob('  ground: { from: amp.GND,', '  ^body: { from: amp.GND,')],
    says: /"body" is a device already/,
  },
  {
    name: 'a fuse at what holds none',
    changes: [inJob('    title: Bass amplifier\n', '    title: Bass amplifier\n    fuse: ^60 A\n')],
    says: /amp is no fuse holder \(amplifier\)/,
    remedy: /at what holds the fuse/,
  },
  {
    name: 'a fuse of a whole block',
    changes: [inJob('  sub: {', '  block: { part: block-a, in: boot, fuse: ^60 A }\n  sub: {')],
    says: /block is no fuse holder \(distribution\)/,
    remedy: /fuses: with the terminal of each fused way/,
  },
  {
    name: 'fuses of a holder',
    changes: [
      inJob(
        'main-fuse: { part: holder-a, in: bay }',
        'main-fuse: { part: holder-a, in: bay, ^fuses: { OUT: 60 A } }',
      ),
    ],
    says: /main-fuse has no fused ways \(fuse-holder\)/,
    remedy: /fuse: with the rating alone/,
  },
  {
    name: 'a fuse of the vehicle at what holds none',
    changes: [
      [
        vehicleFile,
        'alternator: { part: generator-a, zone: engine-bay }',
        'alternator: { part: generator-a, zone: engine-bay, fuses: { ^fuse: 60 A } }',
      ],
    ],
    says: /alternator holds no fuse \(alternator\)/,
  },
  {
    name: 'a terminal that is left open and linked',
    changes: [inJob('left-open:\n', 'left-open:\n  ^amp.B+: not used on this job\n')],
    says: /amp\.B\+ is written as left open, but feed is linked to it/,
    remedy: /take one of them out/,
  },
  {
    name: 'a device in no place',
    changes: [inJob('main-fuse: { part: holder-a, in: bay }', 'main-fuse: ^{ part: holder-a }')],
    says: /main-fuse has no place/,
    remedy: /on:.*in:/,
  },
  {
    name: 'a device in two places',
    changes: [
      withBoard(),
      inJob('main-fuse: { part: holder-a, in: bay }', 'main-fuse: ^{ part: holder-a, in: bay, on: main }'),
    ],
    says: /main-fuse is both on a board and in a place/,
  },
  {
    name: 'a position off every board',
    changes: [inJob('part: holder-a, in: bay', 'part: holder-a, in: bay, at: ^{ x: 1 in, y: 1 in }')],
    says: /main-fuse is on no board/,
  },
  {
    name: 'stock as a device',
    changes: [inJob('part: holder-a, in', 'part: ^red-4, in')],
    says: /"red-4" is stock \(wire\) and can't be a device/,
  },
  {
    name: 'a device as a board sheet',
    changes: [withBoard('ply-a', '^amp-a')],
    says: /"amp-a" is not a board sheet but an amplifier/,
  },
  {
    name: 'wire as a fixing',
    changes: [withBoard('point: p1, fixing: bolt-a', 'point: p1, fixing: ^red-4')],
    says: /"red-4" is not a fixing but a wire/,
  },
  {
    name: 'a cable as wire',
    changes: [inJob('to: amp.B+ }', 'to: amp.B+, wire: ^lead-a }')],
    says: /"lead-a" is not wire but a cable/,
    remedy: /conductors:/,
  },
  {
    name: 'wire as a cable',
    changes: [
      inJob('part: lead-a', 'part: ^red-4'),
      inJob(', cable: lead, conductors: [left]', ', length: 1 m'),
    ],
    says: /"red-4" is not a cable but a wire/,
  },
  {
    name: 'wire as a covering',
    changes: [inJob('covering: loom-a', 'covering: ^red-4')],
    says: /"red-4" is not a covering but a wire/,
  },
  {
    name: 'a reel of another size than asked for',
    changes: [inJob('to: amp.B+ }', 'to: amp.B+, wire: red-4, size: ^8 AWG }')],
    says: /feed asks for 8 AWG, but "red-4" is 4 AWG/,
  },
  {
    name: 'a link with no way to know its length',
    changes: [
      inJob(
        'ground: { from: amp.GND, to: body.cargo, length: 12 in }',
        'ground: ^{ from: amp.GND, to: body.cargo }',
      ),
    ],
    says: /ground leaves its board or lies in the vehicle, and its length is not known/,
    remedy: /run, or write the length that you measured, such as length: 14 in/,
  },
  {
    name: 'a name that is both a terminal and a pair',
    changes: [
      [
        partsFile,
        '      CH1+: { role: speaker-out-positive }',
        '      CH1: { role: signal-out }\n      CH1+: { role: speaker-out-positive }',
      ],
      inJob('speaker: { from: amp.CH1,', 'speaker: { from: ^amp.CH1,'),
    ],
    says: /"amp\.CH1" is both a terminal and a pair/,
  },
  {
    name: 'a job that calls itself another name than its file',
    changes: [inJob('id: demo', 'id: ^demo-two')],
    says: /the job calls itself "demo-two", but its file is demo\.yaml/,
  },
];

describe('what a job says that can not be', () => {
  test.each(disagreements)('$name', expectProblem);
});
