import type { BuildPlan, PlanChannel, PlanSum } from '../../model/plan/index.ts';

/** One response: of a channel, or of several that are alike. */
export interface ResponsePath {
  readonly channels: readonly PlanChannel[];
  readonly levelsDb: readonly number[];
}

/** The paths that hand over to each other, with their sum; alike ones, such as left and right, once. */
export interface ResponseGraph {
  /** Ids of the channels of each sum; where there is none, of each path. */
  readonly of: readonly (readonly string[])[];
  readonly paths: readonly ResponsePath[];
  /** Null for paths that hand over to no other. */
  readonly sum: PlanSum | null;
}

/** Every response of a plan that a filter shapes. */
export function responseGraphs({
  audio: { channels, curves },
}: {
  readonly audio: Pick<BuildPlan['audio'], 'channels' | 'curves'>;
}): ResponseGraph[] {
  const channelsOf = (sum: PlanSum): PlanChannel[] =>
    sum.channels.flatMap((id) => channels.filter((channel) => channel.id === id));
  const handedOver = alike(curves.sums, (sum) => [
    sum.levelsDb,
    sum.handovers.map(({ frequencyHz, sumDb }) => [frequencyHz, sumDb]),
    channelsOf(sum).map(({ levelsDb }) => levelsDb),
  ]).map((sums): ResponseGraph => {
    const paths = (sums[0]?.channels ?? []).map((_, place) => {
      const own = sums.flatMap((sum) => channelsOf(sum)[place] ?? []);
      return pathOf(own.filter(({ id }, index) => own.findIndex((each) => each.id === id) === index));
    });
    return { of: sums.map((sum) => sum.channels), paths, sum: sums[0] ?? null };
  });
  const summed = new Set(curves.sums.flatMap((sum) => sum.channels));
  const alone = channels.filter(
    ({ id, levelsDb, speakers }) => !summed.has(id) && levelsDb.length > 0 && speakers.length > 0,
  );
  if (alone.length === 0) return handedOver;
  const paths = alike(alone, ({ levelsDb }) => levelsDb).map(pathOf);
  return [...handedOver, { of: alone.map(({ id }) => [id]), paths, sum: null }];
}

function pathOf(channels: readonly PlanChannel[]): ResponsePath {
  return { channels, levelsDb: channels[0]?.levelsDb ?? [] };
}

/** Puts together what has the same look. */
function alike<T>(things: readonly T[], lookOf: (thing: T) => unknown): T[][] {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    const look = JSON.stringify(lookOf(thing));
    groups.set(look, [...(groups.get(look) ?? []), thing]);
  }
  return [...groups.values()];
}
