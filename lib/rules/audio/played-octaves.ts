import { pathResponse } from '../../audio/filter/filter-response.ts';
import { type ChainedWay, heardOn, topsOf, wayChain } from '../../audio/filter/way-chain.ts';
import { type Gap, gapsBetween, type PlayedWay } from '../../audio/played-octaves.ts';
import { cornersOf } from '../../audio/test-tone.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import type { VehicleSide } from '../../model/vocabulary.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceIdOf, deviceOf, deviceSpot, terminalNameOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { decibels, hertz, listed } from '../words.ts';

/** A way with where its speakers stand. */
interface Way extends PlayedWay, ChainedWay {
  readonly channel: PlanChannel;
}

function waysOf({ job, plan }: Case): readonly Way[] {
  return plan.audio.channels.flatMap((channel): Way[] => {
    const own = channel.speakers.flatMap((id) => deviceOf(job, id) ?? []);
    const response = pathResponse({ id: channel.id, filters: channel.filters });
    if (own.length === 0 || isFault(response)) return [];
    const sides = new Set(own.map(({ side }) => side));
    const [side = 'middle'] = sides.size === 1 ? sides : [];
    const isBass = own.some(({ spec }) => spec?.kind === 'speaker' && spec.band === 'subwoofer');
    return [{ id: channel.id, response, ...cornersOf(channel.filters), channel, side, isBass }];
  });
}

/**
 * True where a speaker is linked that no channel of the plan drives: by the source itself, whose filters nobody knows, or
 * miswired, which is told. What the others leave open is not known then.
 */
function playsElsewhere({ job, plan }: Case): boolean {
  const onChannels = plan.audio.channels.flatMap(({ speakers }) => speakers);
  return job.devices.some(
    ({ id, spec }) =>
      spec?.kind === 'speaker' &&
      !onChannels.includes(id) &&
      job.links.some(({ from, to }) => [from, to].some(({ device }) => device === id)),
  );
}

/** Any way with a low-pass follows, however far below, that itself goes on below the one above it. */
const mayFollow = ({ lowPassHz, highPassHz = 0 }: Way, aboveHz: number): boolean =>
  lowPassHz !== undefined && highPassHz < aboveHz;

interface Found {
  readonly gap: Gap;
  readonly side: VehicleSide;
  readonly level: 'caution' | 'note';
}

const cornersText = ({ below, above }: Gap) => `${below.lowPassHz} ${above.highPassHz}`;

/** What nobody plays on a side, and what a group leaves open that others play. */
function gapsOf(about: Case, lowestDb: number): readonly Found[] {
  const ways = waysOf(about);
  const onSides = (['left', 'right'] as const).flatMap((side) =>
    gapsBetween(heardOn(ways, side), lowestDb).map((gap): Found => ({ gap, side, level: 'caution' })),
  );
  const inGroups = topsOf(ways).flatMap((top) =>
    gapsBetween(wayChain(top, ways, mayFollow), lowestDb).map(
      (gap): Found => ({ gap, side: top.side, level: 'note' }),
    ),
  );
  const open = new Set(onSides.map(({ gap }) => cornersText(gap)));
  return [...onSides, ...inGroups.filter(({ gap }) => !open.has(cornersText(gap)))];
}

/** Where the high-pass above a gap is written. */
function highPassSpot(job: Job, { filters, amplifier }: PlanChannel) {
  const [highest] = filters
    .filter(({ pass }) => pass !== 'low-pass')
    .toSorted((x, y) => y.cornerHz - x.cornerHz);
  if (!highest) return deviceSpot(job, amplifier, 'filters');
  return deviceSpot(job, deviceIdOf(highest.where), 'filters', terminalNameOf(highest.where));
}

const unplayed: Rule = {
  id: 'octaves-unplayed',
  judge(about) {
    const { value: limitDb, from } = houseRule(about.job, 'gap-level');
    const found = playsElsewhere(about) ? [] : gapsOf(about, limitDb);
    const corners = [...new Set(found.map(({ gap }) => cornersText(gap)))];
    return corners.flatMap((pair): Verdict<'octaves-unplayed'>[] => {
      const alike = found.filter(({ gap }) => cornersText(gap) === pair);
      const [first] = alike;
      if (!first) return [];
      const { below, above, octaves, deepestDb } = first.gap;
      const names = (of: (gap: Gap) => string) => [...new Set(alike.map(({ gap }) => of(gap)))];
      const [lowers, uppers] = [names(({ below: one }) => one.id), names(({ above: one }) => one.id)];
      const open = `${Number(octaves.toFixed(1))} octaves between the low-pass of ${listed(lowers)} at ${hertz(below.lowPassHz)} and the high-pass of ${listed(uppers)} at ${hertz(above.highPassHz)}`;
      const upper = about.plan.audio.channels.find(({ id }) => id === above.id);
      return [
        {
          level: first.level,
          of: [...uppers, ...lowers],
          message: `${first.level === 'caution' ? 'nothing plays' : `${listed(uppers)} and what is below leave open`} the ${open}: together they are ${decibels(Number((-deepestDb).toFixed(1)))} down there at best`,
          value: deepestDb,
          limit: -limitDb,
          unit: 'dB',
          remedy: `bring the two corners together, or give the octaves between them a speaker`,
          ...from,
          ...(upper ? highPassSpot(about.job, upper) : { path: '' }),
        },
      ];
    });
  },
};

export const playedOctaveRules: readonly Rule[] = [unplayed];
