import type { JobFile } from '../../model/content/job.ts';
import type { Run } from '../../model/content/resolved-job.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import type { Part } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
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
    const route = report.look([...path, 'route'], `route of ${vehicle.id}`, given.route, vehicle.routes);
    given.links.forEach((link, index) => {
      const at = [...path, 'links', String(index)];
      if (!report.look(at, 'link', link, job.links)) return;
      const other = byLink.get(link);
      if (other !== undefined)
        report.at(at, `${link} goes by the run ${other} already`, 'name it in one run');
      else byLink.set(link, id);
    });
    if (given.covering !== undefined) checkCovering([...path, 'covering'], given.covering, parts, report);
    if (route)
      runs.push({
        id,
        path: pointer(path),
        routeId: given.route,
        route,
        links: given.links,
        covering: given.covering ?? null,
      });
  }
  return { runs, byLink };
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
