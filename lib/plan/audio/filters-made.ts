import { filterResponse } from '../../audio/filter/filter-response.ts';
import type { Device } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { pointer } from '../../model/place.ts';
import type { PlanBook } from '../plan-book.ts';

/**
 * Stops a job that asks for a filter that nobody makes, such as a Linkwitz-Riley of third order or one at 0 Hz, where
 * it is written: its path would have no response, and what hangs on that would be left out without a word.
 */
export function remarkFiltersNotMade({ id, given, path }: Device, book: PlanBook): void {
  for (const [where, filters] of Object.entries(given?.filters ?? {}))
    for (const [index, { corner, ...filter }] of filters.entries()) {
      const made = filterResponse(`${id}.${where}`, { ...filter, cornerHz: corner });
      if (!isFault(made)) continue;
      const { fault: rule, of, message, remedy } = made;
      book.remark(
        { rule, level: 'stop', of, message, remedy },
        { path: `${path}${pointer(['filters', where, String(index)])}` },
      );
    }
}
