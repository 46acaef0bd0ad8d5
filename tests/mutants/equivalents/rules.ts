import type { Equivalent } from './equivalent.ts';

/** Of what is told. */
export const rules: readonly Equivalent[] = [
  {
    file: 'lib/rules/mounting/wet-zone.ts',
    line: 'const low = fixings.filter(',
    from: 'spacerM < raiseM - 1e-9',
    to: 'spacerM <= raiseM - 1e-9',
    why: 'a spacer on the edge of the rounding error itself is neither side of the bound',
  },
  {
    file: 'lib/rules/mounting/board-holes.ts',
    line: 'if (toEdgeM >= limit - 1e-9',
    from: 'toEdgeM < -1e-9',
    to: 'toEdgeM <= -1e-9',
    why: 'a hole on the edge of the rounding error itself is neither side of the bound',
  },
  {
    file: 'lib/rules/data/part-doubts.ts',
    line: 'isHeavy || kgPerLitre < lightest',
    from: 'kgPerLitre < lightest',
    to: 'kgPerLitre <= lightest',
    why: 'a mass on the bound to the last digit is neither side of it',
  },
  {
    file: 'lib/rules/supply/system-voltage.ts',
    line: 'if (mostV <= ratedV + 1e-9',
    from: 'deviceOf(about.job, fuse.item)?.origin',
    to: 'deviceOf(about.job, fuse.item).origin',
    why: 'every fuse of a plan stands in a device of its job',
  },
  {
    file: 'lib/rules/audio/filters/filters-not-made.ts',
    line: '({ pass, cornerHz: askedHz }) => pass === made.pass',
    from: 'Math.abs(askedHz - cornerHz) <= 1e-6 * cornerHz',
    to: 'Math.abs(askedHz - cornerHz) < 1e-6 * cornerHz',
    why: 'corners on the edge of the rounding error itself are neither the same nor two',
  },
  {
    file: 'lib/rules/audio/left-and-right.ts',
    line: 'const feeding = channelInputs(job, channel)',
    from: '[]',
    to: '["Stryker was here"]',
    why: 'a text has no terminal, so that no wire ends there',
  },
  {
    file: 'lib/rules/audio/played-octaves.ts',
    line: 'if (!first) return [];',
    from: '!first',
    to: 'false',
    why: 'each pair of corners is that of a gap which was found',
  },
  {
    file: 'lib/rules/audio/speaker-load.ts',
    line: '.filter((name) => terminals[name]?.role',
    from: 'terminals[name]?.role',
    to: 'terminals[name].role',
    why: 'the names are those of the terminals themselves',
  },
  {
    file: 'lib/rules/conductors/fuse-passed-by.ts',
    line: 'if (open === null || near === undefined) return [];',
    from: 'near === undefined',
    to: 'false',
    why: 'a fuse has two ends, and not both are the open one',
  },
  {
    file: 'lib/rules/conductors/route-ends.ts',
    line: "device.spec?.kind === 'speaker' &&",
    from: 'device.spec?.kind',
    to: 'device.spec.kind',
    why: 'what a run leads to has a place of its own, and so is a part',
  },
  {
    file: 'lib/rules/mounting/places.ts',
    line: 'const enclosures = boxes.filter(',
    from: 'device.spec?.kind',
    to: 'device.spec.kind',
    why: 'what has a footprint is a part',
  },
];
