import { describe, expect, test } from 'vitest';
import { placeText } from '../../../lib/model/place.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import {
  expectProblem,
  inJob,
  type ProblemCase,
  partsFile,
  vehicleFile,
  withBoard,
} from '../problem-case.ts';
import { smallShop, withoutMark } from '../small-shop.ts';

const unknownNames: readonly ProblemCase[] = [
  {
    name: 'a part of a device',
    changes: [inJob('part: amp-a', 'part: ^amp-aa')],
    says: /no part "amp-aa"/,
    remedy: /^did you mean "amp-a"\? If not, write it with rackleaf new part amp-aa --kind KIND$/,
  },
  {
    name: 'a part of a device, for which the nearest name is that of a lead',
    changes: [inJob('part: woofer-a', 'part: ^lead-b')],
    says: /no part "lead-b"/,
    remedy:
      /^known: amp-a, battery-a, block-a, generator-a, holder-a, radio-a, woofer-a; or write it with rackleaf new part lead-b --kind KIND$/,
  },
  {
    name: 'a holder, told by its fuse, for which the nearest name is that of an amplifier',
    changes: [
      inJob('main-fuse: { part: holder-a, in: bay }', 'main-fuse: { part: ^amp-b, in: bay, fuse: 60 A }'),
    ],
    says: /no part "amp-b"/,
    remedy: /^known: holder-a; or write it with rackleaf new part amp-b --kind fuse-holder$/,
  },
  {
    name: 'a lead',
    changes: [inJob('lead: { part: lead-a }', 'lead: { part: ^leed-a }')],
    says: /no part "leed-a"/,
    remedy: /^did you mean "lead-a"\? If not, write it with rackleaf new part leed-a --kind cable$/,
  },
  {
    name: 'a finding that is accepted',
    changes: [
      inJob(
        'status: draft',
        'accepted: [{ finding: ^drop-over-limt, of: amp, value: 1 V, reason: seen, by: P. T. }]\nstatus: draft',
      ),
    ],
    says: /no finding "drop-over-limt"/,
    remedy: /did you mean "drop-over-limit"/,
  },
  {
    name: 'the vehicle',
    changes: [inJob('vehicle: wagon', 'vehicle: ^wagn')],
    says: /no vehicle "wagn"/,
    remedy: /^did you mean "wagon"\? If not, write it with rackleaf new vehicle wagn$/,
  },
  {
    name: 'the space of the job',
    changes: [inJob('space: well', 'space: ^wel')],
    says: /no space of wagon "wel"/,
    remedy: /"well"/,
  },
  {
    name: 'a place of the vehicle',
    changes: [inJob('part: holder-a, in: bay', 'part: holder-a, in: ^bai')],
    says: /no place of wagon "bai"/,
    remedy: /"bay"/,
  },
  {
    name: 'a board',
    changes: [withBoard(), inJob('part: holder-a, in: bay', 'part: holder-a, on: ^mian')],
    says: /no board "mian"/,
    remedy: /did you mean "main"/,
  },
  {
    name: 'a terminal',
    changes: [inJob('to: amp.REM', 'to: ^amp.RME')],
    says: /no terminal of amp "RME"/,
    remedy: /did you mean "REM"/,
  },
  {
    name: 'a device at the end of a link',
    changes: [inJob('to: amp.REM', 'to: ^apm.REM')],
    says: /no device "apm"/,
    remedy: /did you mean "amp"/,
  },
  {
    name: 'a ground point of the body',
    changes: [inJob('to: body.cargo', 'to: ^body.crago')],
    says: /no terminal of body "crago"/,
    remedy: /did you mean "cargo"/,
  },
  {
    name: 'a control',
    changes: [inJob('GAIN: fully', 'GIAN: ^fully')],
    says: /no control of amp "GIAN"/,
    remedy: /did you mean "GAIN"/,
  },
  {
    name: 'an output with filters',
    changes: [inJob('CH1: [{', 'CHI1: ^[{')],
    says: /no terminal of amp "CHI1"/,
    remedy: /did you mean "CH1"/,
  },
  {
    name: 'a terminal like no other',
    changes: [inJob('to: amp.REM', 'to: ^amp.SOMETHING')],
    says: /no terminal of amp "SOMETHING"/,
    remedy: /known: B\+, .*REM/,
  },
  {
    name: 'a cable',
    changes: [inJob('cable: lead,', 'cable: ^led,')],
    says: /no cable "led"/,
    remedy: /did you mean "lead"/,
  },
  {
    name: 'a conductor of a cable',
    changes: [inJob('conductors: [left]', 'conductors: [^letf]')],
    says: /no conductor of lead "letf"/,
    remedy: /did you mean "left"/,
  },
  {
    name: 'the part of a cable',
    changes: [inJob('part: lead-a', 'part: ^leda-a')],
    says: /no part "leda-a"/,
    remedy: /did you mean "lead-a"/,
  },
  {
    name: 'a route',
    changes: [inJob('route: left-sill', 'route: ^left-sil')],
    says: /no route of wagon "left-sil"/,
    remedy: /did you mean "left-sill"/,
  },
  {
    name: 'a link in a run',
    changes: [inJob('links: [feed]', 'links: [^fed]'), inJob('to: amp.B+ }', 'to: amp.B+, length: 4 m }')],
    says: /no link "fed"/,
    remedy: /did you mean "feed"/,
  },
  {
    name: 'a covering',
    changes: [inJob('covering: loom-a', 'covering: ^lom-a')],
    says: /no part "lom-a"/,
    remedy: /did you mean "loom-a"/,
  },
  {
    name: 'a reel',
    changes: [inJob('to: amp.B+ }', 'to: amp.B+, wire: ^red-44 }')],
    says: /no part "red-44"/,
    remedy: /did you mean "red-4"/,
  },
  {
    name: 'a terminal that is left open',
    changes: [inJob('radio.OUT2: one', 'radio.OUTT2: ^one')],
    says: /no terminal of radio "OUTT2"/,
    remedy: /did you mean "OUT2"/,
  },
  {
    name: 'a sheet of a board',
    changes: [withBoard('ply-a', '^ply-aa')],
    says: /no part "ply-aa"/,
    remedy: /did you mean "ply-a"/,
  },
  {
    name: 'a sound point',
    changes: [withBoard('point: p1,', 'point: ^pp1,')],
    says: /no sound point of well "pp1"/,
    remedy: /did you mean "p1"/,
  },
  {
    name: 'a part in the stock',
    changes: [['content/shop.yaml', 'red-8: {', 'redd-8: ^{']],
    says: /no part "redd-8"/,
    remedy: /did you mean "red-8"/,
  },
  {
    name: 'pieces of what is cut from a reel',
    changes: [['content/shop.yaml', 'red-8: { reels: [30 ft] }', 'red-8: ^{ pieces: 4 }']],
    says: /"red-8" \(wire\) is kept on the reel/,
    remedy: /write reels: with the length left on each/,
  },
  {
    name: 'a reel of what comes by the piece',
    changes: [['content/shop.yaml', 'large-80: { pieces: 2 }', 'large-80: ^{ reels: [30 ft] }']],
    says: /"large-80" \(fuse\) is kept by the piece/,
    remedy: /write pieces: with how many there are/,
  },
  {
    name: 'off-cuts of what is no sheet',
    changes: [
      [
        'content/shop.yaml',
        'large-80: { pieces: 2 }',
        'large-80: { pieces: 2, ^off-cuts: { a: { width: 1 m, height: 1 m } } }',
      ],
    ],
    says: /"large-80" has off-cuts, but it is no board sheet \(fuse\)/,
    remedy: /board sheets/,
  },
  {
    name: 'a part that the vehicle came with',
    changes: [[vehicleFile, 'part: generator-a', 'part: ^generater-a']],
    says: /no part "generater-a"/,
    remedy: /did you mean "generator-a"/,
  },
  {
    name: 'a terminal that the vehicle joins',
    changes: [[vehicleFile, 'from: alternator.CASE', 'from: ^alternator.CAES']],
    says: /no terminal of alternator "CAES"/,
    remedy: /did you mean "CASE"/,
  },
  {
    name: 'a ground point that the vehicle joins',
    changes: [
      [
        vehicleFile,
        'strap: { from: battery.NEG, to: body.engine',
        'strap: { from: battery.NEG, to: ^body.enigne',
      ],
    ],
    says: /no ground point "enigne"/,
    remedy: /did you mean "engine"/,
  },
  {
    name: 'a place on an edge that is shorter',
    changes: [
      [
        vehicleFile,
        'reaches: { space: well, edge: left }',
        'reaches: { space: well, edge: left, at: ^501 mm }',
      ],
    ],
    says: /left edge of well ends before it/,
    remedy: /along that edge from below/,
  },
  {
    name: 'a place at the end of a route',
    changes: [[vehicleFile, 'reaches: { space: well, edge: left }', 'ends: [bay, ^boott]']],
    says: /no place or fitted device "boott"/,
    remedy: /did you mean "boot"/,
  },
  {
    name: 'a ground point at the end of a route',
    changes: [[vehicleFile, 'reaches: { space: well, edge: left }', 'ends: [bay, ^engine]']],
    says: /engine is a ground point, and is called body\.engine/,
    remedy: /write body\.engine in its place, under serves: of the route/,
  },
  {
    name: 'an input that a channel adds',
    changes: [[partsFile, 'input: IN1, minimum', 'input: IN1, summed: [^IN11], minimum']],
    says: /no terminal of amp-a "IN11"/,
    remedy: /did you mean "IN1"/,
  },
  {
    name: 'a mix of what is no processor',
    changes: [inJob('    title: Bass amplifier\n', '    title: Bass amplifier\n    mix: { ^IN1: [IN1] }\n')],
    says: /amp is no processor, so it has no mix/,
    remedy: /take it out/,
  },
  {
    name: 'an output that is equalised',
    changes: [
      inJob(
        '    title: Bass amplifier\n',
        '    title: Bass amplifier\n    equalising: { CH2: ^[{ centre: 40 Hz, gain: 3 dB }] }\n',
      ),
    ],
    says: /no terminal of amp "CH2"/,
  },
  {
    name: 'the space that a route reaches',
    changes: [[vehicleFile, 'reaches: { space: well', 'reaches: { space: ^wel']],
    says: /no space "wel"/,
    remedy: /did you mean "well"/,
  },
];

describe('a name that is not known', () => {
  test.each(unknownNames)('$name', expectProblem);

  test('a job in a vehicle with a name that is not known is not handed on to be planned', () => {
    const { jobs, unreadJobs, problems } = readContent(
      smallShop([vehicleFile, '  alternator: { part: generator-a, zone: engine-bay }\n', '']),
    );
    expect(problems).toContainEqual(
      expect.objectContaining({ message: expect.stringMatching(/alternator/) }),
    );
    expect(jobs).toEqual([]);
    expect(unreadJobs).toEqual(['demo']);
  });

  test('fuses of a distribution go by its fused ways', () => {
    const block = (ways: string) =>
      inJob('  sub: {', `  block: { part: block-a, in: boot, fuses: { ${ways} } }\n  sub: {`);
    const { files, place } = withoutMark(smallShop(block('OUT11: ^40 A')));
    const [problem] = readContent(files).problems;
    expect(problem).toMatchObject({
      message: 'there is no fused way of block "OUT11"',
      remedy: 'did you mean "OUT1"?',
    });
    expect(problem && placeText(problem.where)).toBe(place);
    expect(readContent(smallShop(block('OUT1: 40 A'))).problems).toEqual([]);
  });
});
