import type { Case } from '../../../../lib/rules/rule.ts';
import { about, aboutPlan, byId, entry } from '../../case.ts';
import { fuse, mainFuseAt, secondBattery, wire } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The lead to the main fuse, so many inches long, on a loomed run of so many. */
function feedInRun(lengthIn: number, runIn: number): Case {
  return about({
    content: ({ job }) => {
      entry(job.runs, 'left').links.push('feed');
    },
    plan: (plan) => {
      wire(plan, 'feed').lengthM = lengthIn * 0.0254;
      byId(plan.runs, 'left').lengthM = runIn * 0.0254;
    },
  });
}

/** The main fuse so many inches from its battery, and a second lead beside the first one, so many inches long. */
function besideFeed(lengthIn: number, feedIn = 6, plannedIn = feedIn): Case {
  return about({
    content: ({ job }) => {
      job.links['feed-beside'] = { ...entry(job.links, 'feed') };
    },
    plan: (plan) => {
      wire(plan, 'feed').lengthM = feedIn * 0.0254;
      wire(plan, 'feed-beside').lengthM = lengthIn * 0.0254;
      fuse(plan, 'main-fuse').distanceM = plannedIn * 0.0254;
    },
  });
}

/** The lead to the main fuse, 12 in of it bare, beside a route between its two ends. */
function bareAlong(routeLength: string, given: string): Case {
  return about({
    content: ({ job, vehicle }) => {
      entry(job.links, 'feed').length = given;
      const seat = entry(job.devices, 'main-fuse').in;
      vehicle.routes['battery-bracket'] = {
        ...{ title: 'Battery to bracket', side: 'left', ends: ['battery', String(seat)] },
        passes: [{ zone: 'engine-bay', length: routeLength }],
      };
    },
    plan: (plan) => {
      Object.assign(wire(plan, 'feed'), { lengthM: 12 * 0.0254, diameterM: 0.012, run: null });
      fuse(plan, 'main-fuse').distanceM = 12 * 0.0254;
    },
  });
}

export const fuseAtSourceCases = {
  // 33 CFR 183.455: 7 in along the conductor, 40 in if sheathed all the way; 18 in in loom is common practice.
  'fuse-distance': {
    fires: [
      {
        name: '12 in, bare',
        about: () => mainFuseAt(12),
        level: 'caution',
        subject: 'main-fuse',
        says: /305 mm \(12 in\)/,
      },
      {
        name: '20 in, bare',
        about: () => mainFuseAt(20),
        level: 'stop',
        subject: 'main-fuse',
        toDo: /move the fuse nearer to battery, or run feed in loom/,
      },
      {
        name: '12 in, bare, along a route of the vehicle that is as long: the lines that cover it from end to end',
        about: () => bareAlong('12 in', '12 in'),
        level: 'caution',
        subject: 'main-fuse',
        toDo: /write feed: \{ route: battery-bracket, links: \[feed\], covering: loom \} under runs:; the length that feed has stands as it is$/,
      },
      {
        name: 'along one that is shorter than its given length: no line would do',
        about: () => bareAlong('8 in', '12 in'),
        level: 'caution',
        subject: 'main-fuse',
        toDo: /tails and loops with it$/,
      },
      {
        name: '20 in, in tape alone',
        about: () => mainFuseAt(20, ['tape']),
        level: 'stop',
        subject: 'main-fuse',
      },
      {
        name: '30 in, in loom',
        about: () => mainFuseAt(30, ['loom']),
        level: 'caution',
        subject: 'main-fuse',
      },
      { name: '41 in, in loom', about: () => mainFuseAt(41, ['loom']), level: 'stop', subject: 'main-fuse' },
      {
        name: '41 in, bare: loom would not do',
        about: () => mainFuseAt(41),
        level: 'stop',
        subject: 'main-fuse',
        toDo: /^move the fuse nearer to battery$/,
      },
      {
        name: 'a link between two batteries with a fuse at one end alone',
        about: () =>
          secondBattery(false, (plan) => {
            wire(plan, 'main').lengthM = 4;
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /from second.POS/,
        toDo: /^put a fuse at second too$/,
      },
      {
        name: 'two batteries, both too far: the near one stops though the far one is the farther',
        about: () =>
          secondBattery(false, (plan) => {
            wire(plan, 'main').lengthM = 4;
            wire(plan, 'feed').lengthM = 0.6;
          }),
        level: 'stop',
        subject: 'main-fuse',
        says: /from battery.POS/,
      },
      {
        name: '20 in in a loomed run of 14 in: 6 in of tails are bare',
        about: () => feedInRun(20, 14),
        level: 'stop',
        subject: 'main-fuse',
        says: /6 in \(152 mm\) of it bare/,
      },
      {
        name: 'a distance that the plan does not know',
        about: () =>
          aboutPlan((plan) => {
            wire(plan, 'feed').lengthM = 2;
            fuse(plan, 'main-fuse').distanceM = null;
            fuse(plan, 'main-fuse').source = null;
          }),
        level: 'stop',
        subject: 'main-fuse',
      },
      {
        name: 'a second lead beside the short one to the same fuse, 40 in bare: the long one is judged too',
        about: () => besideFeed(40),
        level: 'stop',
        subject: 'main-fuse',
        says: /stands 1016 mm \(40 in\) along the conductor from battery\.POS/,
      },
      {
        name: 'two leads to the same fuse, 12 in and 40 in, the plan tells the longer: the short one is told with its own length',
        about: () => besideFeed(40, 12, 40),
        level: 'caution',
        subject: 'main-fuse',
        says: /stands 305 mm \(12 in\)/,
      },
    ],
    quiet: [
      { name: 'a second lead beside the short one, 7 in as well', about: () => besideFeed(7) },
      { name: '7 in, bare', about: () => mainFuseAt(7) },
      { name: '18 in, in loom', about: () => mainFuseAt(18, ['loom']) },
      { name: '18 in, on a loomed run as long as itself', about: () => feedInRun(18, 18) },
    ],
  },
} satisfies RuleCases;
