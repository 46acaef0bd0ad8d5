import { expect, test } from 'vitest';
import { demoJob } from '../plan/demo.ts';
import { endsOf } from './ends.ts';
import { rewrittenJob } from './short-shop.ts';

/** What a rule calls otherwise than the demo job does. */
const renamed = {
  'fuse-starter-battery': 'fuse-front',
  'fuse-second-battery': 'fuse-rear',
  'sub-left-box': 'enclosure-left',
  'sub-right-box': 'enclosure-right',
};

test.each(['under-seat-five', 'estate-side-well', 'van-three-amps'])(
  '%s rewritten short joins the same terminals as the written job',
  (id) => {
    expect(endsOf(rewrittenJob(id), renamed)).toEqual(endsOf(demoJob(id)));
  },
);

/** Filters by output, whatever their order. */
function filtersOf(job: ReturnType<typeof rewrittenJob>): Readonly<Record<string, readonly string[]>> {
  return Object.fromEntries(
    job.devices.flatMap(({ id, given }) =>
      Object.entries(given?.filters ?? {}).map(([output, filters]) => [
        `${id}.${output}`,
        filters.map(({ pass, type, order, corner }) => `${pass} ${type} ${order} ${corner}`).toSorted(),
      ]),
    ),
  );
}

test.each(['under-seat-five', 'estate-side-well', 'van-three-amps'])(
  '%s rewritten short has the filters, fixings and cables of the written job',
  (id) => {
    const [short, written] = [rewrittenJob(id), demoJob(id)];
    expect(filtersOf(short)).toEqual(filtersOf(written));
    const fixings = (job: typeof short) =>
      job.boards.flatMap(({ given }) =>
        Object.values(given.fixings).map(({ point, fixing, spacer }) => `${point} ${fixing} ${spacer}`),
      );
    expect(fixings(short).toSorted()).toEqual(fixings(written).toSorted());
  },
);
