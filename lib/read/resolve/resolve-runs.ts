import type { JobFile } from '../../model/content/job.ts';
import { routesOf } from '../../model/content/job-links.ts';
import type { Run } from '../../model/content/resolved-job.ts';
import { chained, joinedRoute, type RunWay, waysId } from '../../model/content/run-ways.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { Part } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import { listed } from '../../model/printed/listed.ts';
import { withArticle } from '../../model/printed/with-article.ts';
import { lookPart } from '../names/look-part.ts';
import type { Report } from '../report.ts';

/** The runs of a job with their route looked up, and the run of each link. A link goes by one run at most. */
export function resolveRuns(
  job: JobFile,
  vehicle: Vehicle,
  parts: Readonly<Record<string, Part>>,
  report: Report,
): { readonly runs: Run[]; readonly byLink: ReadonlyMap<string, string> } {
  const byLink = new Map<string, string>();
  const runs: Run[] = [];
  for (const [id, given] of Object.entries(job.runs)) {
    const path = ['runs', id];
    const ways = waysOf([...path, 'route'], given.route, vehicle, report);
    given.links.forEach((link, index) => {
      const at = [...path, 'links', String(index)];
      if (!report.look(at, 'link', link, job.links)) return;
      const other = byLink.get(link);
      if (other !== undefined)
        report.at(at, `${link} goes by the run ${other} already`, oneRun(job, other, id));
      else byLink.set(link, id);
    });
    if (given.covering !== undefined) checkCovering([...path, 'covering'], given.covering, parts, report);
    if (ways)
      runs.push({
        id,
        path: pointer(path),
        routeId: waysId(ways),
        route: joinedRoute(ways),
        ways,
        links: given.links,
        covering: given.covering ?? null,
      });
  }
  return { runs, byLink };
}

/** The routes of a run, looked up and turned so that each begins where the one before it ends; null where that can't be. */
function waysOf(
  path: readonly string[],
  given: JobFile['runs'][string]['route'],
  vehicle: Vehicle,
  report: Report,
): readonly RunWay[] | null {
  const named = routesOf({ route: given }).map((id, at) => {
    const spot = typeof given === 'string' ? path : [...path, String(at)];
    return { id, route: report.look(spot, `route of ${vehicle.id}`, id, vehicle.routes) };
  });
  const routes = named.flatMap(({ id, route }) => (route ? [{ id, route }] : []));
  if (routes.length < named.length) return null;
  const ways = chained(routes);
  if (ways) return ways;
  report.at(
    path,
    `${listed(routes.map(({ id }) => id))} do not meet one after another: a route meets the next in a place at an end of both`,
    "name them in the order in which a wire goes by them, and write that place under ends: of both in the vehicle's file",
  );
  return null;
}

/** How a link that two runs name goes by the routes of both: one run names several. */
function oneRun(job: JobFile, before: string, now: string): string {
  const routes = [before, now].flatMap((id) => {
    const run = job.runs[id];
    return run ? routesOf(run) : [];
  });
  const all = [...new Set(routes)];
  return all.length > 1
    ? `name it in one run, and several routes that meet in it: route: [${all.join(', ')}]`
    : 'name it in one run';
}

function checkCovering(
  path: readonly string[],
  name: string,
  parts: Readonly<Record<string, Part>>,
  report: Report,
): void {
  const part = lookPart(report, path, name, parts, 'covering');
  if (part && part.kind !== 'covering')
    report.at(path, `"${name}" is not a covering but ${withArticle(part.kind)}`);
}
