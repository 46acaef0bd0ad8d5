import { describe, expect, test } from 'vitest';
import { batteryShare, circuitIn } from '../../../../lib/plan/power/circuit/circuit-states.ts';
import { coldElements } from '../../../../lib/plan/power/circuit/cold-elements.ts';
import { byId, jobOf, one, partIn } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { banked, cabled, charged, isolated } from '../two-batteries.ts';

const input = (change: (content: Written) => void = cabled) => settledPower(change);
type Input = ReturnType<typeof input>;
const cold = (from: Input, id: string) => {
  const edge = one(from.circuit.edges, (each) => each.id === id);
  return coldElements(from, edge);
};

describe('what stands in the way of a dead short, at the least', () => {
  test('is of a conductor its length alone, cold: copper of 21.15 mm2 at the temperature of the house rule', () => {
    const from = input();
    const [feed, ...more] = cold(from, 'feed');
    expect(more).toEqual([]);
    const sized = byId(
      [...from.conductors.values()].map((each) => ({ ...each, id: each.link.id })),
      'feed',
    );
    const coldC = from.job.rules['short-conductor-temperature'].value;
    // IEC 60228: 17.241 nohm m at 20 C, 0.00393 per K; stranded about 2 % above.
    const bareOhm =
      (17.241e-9 * (1 + 0.00393 * (coldC - 20)) * sized.lengthM) / (sized.cable.size.areaMm2 * 1e-6);
    expect(feed).toMatchObject({
      id: 'feed',
      of: 'feed',
      kind: 'conductor',
      from: 'battery.POS',
      to: 'main-fuse.IN',
    });
    expect(feed && 'ohm' in feed ? (feed.ohm ?? 0) / bareOhm : 0).toBeCloseTo(1.02, 1);
    const thinner = cold(
      input((content) => {
        cabled(content);
        const { cable } = content.parts;
        if (cable?.kind === 'wire') cable.measured = '2 mohm/m';
      }),
      'feed',
    )[0];
    expect(thinner && 'ohm' in thinner ? thinner.ohm : 0).toBeGreaterThan(
      feed && 'ohm' in feed ? (feed.ohm ?? 0) : 0,
    );
  });

  test('is of the body half of its least, for each of two ground points, and of a joint nothing', () => {
    const from = input();
    const least = from.job.rules['short-body-resistance'].value;
    expect(cold(from, 'body.cargo')).toEqual([
      {
        ...{ id: 'body.cargo', of: 'body', kind: 'joint', model: 'resistance', ohm: least / 2 },
        ...{ from: 'body.cargo', to: 'body' },
      },
    ]);
    const [bar] = from.circuit.edges.filter(
      ({ kind, device }) => kind === 'joint' && device?.id === 'ground',
    );
    expect(cold(from, bar?.id ?? '')[0]).toMatchObject({ of: 'ground', kind: 'joint', ohm: 0 });
  });

  test('is of a fuse a share of what it has warm, and nothing of one that is not there', () => {
    const from = input();
    const share = from.job.rules['short-fuse-cold'].value;
    const of = (scale: number) => {
      const job = {
        ...from.job,
        rules: {
          ...from.job.rules,
          'short-fuse-cold': { ...from.job.rules['short-fuse-cold'], value: scale },
        },
      };
      const [fuse] = cold({ ...from, job }, 'main-fuse');
      return fuse && 'ohm' in fuse ? (fuse.ohm ?? Number.NaN) : Number.NaN;
    };
    expect(of(1)).toBeGreaterThan(0);
    expect(of(share)).toBeCloseTo(share * of(1), 12);
    expect(cold(from, 'main-fuse')[0]).toMatchObject({ of: 'main-fuse', kind: 'fuse' });
    expect(cold({ ...from, fuses: [] }, 'main-fuse')).toEqual([]);
    expect(cold({ ...from, conductors: new Map() }, 'feed')).toEqual([]);
  });
});

// House rule, common practice, no source: 0.12 V over a blade at its rating, warm.
test('each fuse is in the way by its own rating', () => {
  const from = input();
  const share = from.job.rules['short-fuse-cold'].value;
  const ratings = ['block.OUT1', 'block.OUT2', 'block.OUT3'].map((id, at) => {
    const fuses = from.fuses.map((fuse) =>
      fuse.edge.id === id ? { ...fuse, ratingA: 20 + 10 * at } : { ...fuse, ratingA: 5 },
    );
    const [element] = cold({ ...from, fuses }, id);
    expect(element).toMatchObject({ id, kind: 'fuse' });
    return element && 'ohm' in element ? element.ohm : Number.NaN;
  });
  expect(ratings).toEqual([20, 30, 40].map((ratingA) => expect.closeTo((share * 0.12) / ratingA, 12)));
});

describe('what of a circuit carries a lasting current', () => {
  const sources = (change: (content: Written) => void, state: 'engine-on' | 'engine-off') =>
    circuitIn(input(change).circuit, state)
      .sources.map(({ device }) => device.id)
      .toSorted();

  test('is no bank of capacitors, and a charger only while the engine runs and something feeds it', () => {
    expect(sources(banked, 'engine-on')).toEqual(['alternator', 'battery']);
    expect(sources(charged, 'engine-on')).toEqual(['alternator', 'battery', 'charger', 'second']);
    expect(sources(charged, 'engine-off')).toEqual(['alternator', 'battery', 'second']);
    const unfed = (content: Written) => {
      charged(content);
      delete content.job.links.main;
    };
    expect(sources(unfed, 'engine-on')).toEqual(['alternator', 'battery', 'second']);
  });

  test('is a relay contact as it stands', () => {
    const contacts = (state: 'engine-on' | 'engine-off') =>
      circuitIn(input(isolated).circuit, state).edges.filter(({ closed }) => closed !== undefined).length;
    expect([contacts('engine-on'), contacts('engine-off')]).toEqual([1, 0]);
  });

  test('has a battery of half the voltage of its vehicle as half of it', () => {
    const content = written();
    content.vehicle['system-voltage'] = '24 V';
    partIn(content, 'agm', 'battery').voltage = '24 V';
    const job = jobOf(content);
    const { spec } = byId(job.devices, 'battery');
    if (spec?.kind !== 'battery') throw new Error('It is a battery.');
    expect(batteryShare(job, spec)).toBe(1);
    const { spec: usual } = byId(jobOf(written()).devices, 'battery');
    if (usual?.kind !== 'battery') throw new Error('It is a battery.');
    expect(batteryShare(job, usual)).toBe(0.5);
  });
});
