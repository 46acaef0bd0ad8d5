import { describe, expect, test } from 'vitest';
import {
  buildCircuit,
  fuseId,
  isStore,
  limitA,
  unlinkedPosts,
} from '../../../../lib/plan/power/circuit/circuit.ts';
import { jobOf, one, partIn } from '../../../rules/case.ts';
import { type Written, written } from '../../../rules/content.ts';
import { banked, charged, isolated } from '../two-batteries.ts';

function circuit(change: (content: Written) => void = () => {}) {
  const content = written();
  change(content);
  const job = jobOf(content);
  return { job, ...buildCircuit(job, new Map(job.devices.map((device) => [device.id, device]))) };
}
const edge = ({ edges }: ReturnType<typeof circuit>, id: string) => one(edges, (each) => each.id === id);
const ids = ({ edges }: ReturnType<typeof circuit>, kind: string) =>
  edges.filter((each) => each.kind === kind).map(({ id }) => id);

describe('the edges of a circuit', () => {
  test('are the conductors of feed and ground, and no other wires', () => {
    const found = circuit();
    expect(edge(found, 'amp-feed')).toMatchObject({
      kind: 'conductor',
      from: 'block.OUT1',
      to: 'amp.B+',
      way: '',
    });
    expect(edge(found, 'amp-feed').link?.id).toBe('amp-feed');
    expect(edge(found, 'amp-feed').device).toBeNull();
    const conductors = ids(found, 'conductor');
    expect(conductors).toEqual(expect.arrayContaining(['board-ground', 'feed', 'main', 'vehicle.charge']));
    for (const id of ['radio-rem', 'signal-1', 'speaker-1.+', 'radio-signal'])
      expect(conductors).not.toContain(id);
    expect([found.roles.get('amp-feed'), found.roles.get('amp-ground'), found.roles.get('amp-rem')]).toEqual([
      'power',
      'ground',
      'turn-on',
    ]);
  });

  test('are the fuses, named by their holder, or by holder and way', () => {
    const found = circuit();
    expect(ids(found, 'fuse').toSorted()).toEqual(['block.OUT1', 'block.OUT2', 'block.OUT3', 'main-fuse']);
    expect(edge(found, 'main-fuse')).toMatchObject({
      from: 'main-fuse.IN',
      to: 'main-fuse.OUT',
      way: '',
      link: null,
    });
    expect(edge(found, 'block.OUT1')).toMatchObject({ from: 'block.IN', to: 'block.OUT1', way: 'OUT1' });
    expect(edge(found, 'block.OUT1').device?.id).toBe('block');
    expect([fuseId('a', ''), fuseId('a', 'OUT1')]).toEqual(['a', 'a.OUT1']);
  });

  test('join every ground point to the body, and the terminals of a bar to each other', () => {
    const found = circuit();
    for (const point of ['cargo', 'dash', 'engine'])
      expect(edge(found, `body.${point}`)).toMatchObject({
        kind: 'joint',
        from: `body.${point}`,
        to: 'body',
      });
    expect(edge(found, 'body.cargo').device?.id).toBe('body');
    expect(edge(found, 'ground.G0>G1')).toMatchObject({
      kind: 'joint',
      from: 'ground.G0',
      to: 'ground.G1',
      ohm: 0,
    });
  });

  test('are contacts with what their part says of them: when they close, and their resistance', () => {
    const found = circuit((content) => {
      isolated(content);
      partIn(content, 'isolator', 'isolating-relay')['continuous-current'] = '100 A';
    });
    expect(edge(found, 'isolator.A>B')).toMatchObject({ kind: 'joint', closed: 'engine-on' });
    const plain = circuit(({ job }) => {
      job.devices.relay = { part: 'relay', in: 'boot' };
    });
    expect(edge(plain, 'relay.30>87')).not.toHaveProperty('closed');
    expect(edge(plain, 'relay.30>87')).not.toHaveProperty('ohm');
  });
});

describe('the sources of a circuit', () => {
  test("begin with the vehicle's battery, whatever else is written before it", () => {
    const first = circuit(({ job, vehicle }) => {
      job.devices = { aaa: { part: 'agm', in: 'boot' }, ...job.devices };
      const { battery, ...others } = vehicle.fitted;
      vehicle.fitted = { ...others, ...(battery && { battery }) };
    });
    expect(first.sources.map(({ device }) => device.id).toSorted()).toEqual(['aaa', 'alternator', 'battery']);
    expect(first.primary?.device.id).toBe('battery');
    expect(first.primary).toMatchObject({
      type: 'battery',
      positive: 'battery.POS',
      negative: 'battery.NEG',
    });
  });

  test('begin with another where the vehicle has no battery, and with none where there is none', () => {
    const without = (more: (content: Written) => void) =>
      circuit((content) => {
        const { vehicle, job } = content;
        vehicle.fitted = {};
        vehicle.links = {};
        delete job.links.feed;
        more(content);
      });
    expect(
      without(({ job }) => {
        job.devices.own = { part: 'agm', in: 'boot' };
      }).primary?.device.id,
    ).toBe('own');
    expect(without(() => {}).primary).toBeNull();
  });

  test('limit themselves where they are chargers, and hold a charge where they are batteries or banks', () => {
    const of = (change: (content: Written) => void, id: string) =>
      one(circuit(change).sources, ({ device }) => device.id === id);
    expect([
      limitA(of(charged, 'charger')),
      limitA(of(charged, 'second')),
      limitA(of(banked, 'bank')),
    ]).toEqual([30, null, null]);
    expect([
      isStore(of(charged, 'second')),
      isStore(of(banked, 'bank')),
      isStore(of(charged, 'charger')),
      isStore(of(charged, 'alternator')),
    ]).toEqual([true, true, false, false]);
  });

  test('feed the devices that draw current, between their own terminals', () => {
    const { loads } = circuit();
    expect(loads.map(({ device, from, to }) => [device.id, from, to])).toEqual(
      expect.arrayContaining([['amp', 'amp.B+', 'amp.GND']]),
    );
    expect(loads.map(({ device }) => device.id).toSorted()).toEqual(['amp', 'dsp', 'radio']);
  });
});

describe('leads of the vehicle that its file leaves out', () => {
  const without = (...links: readonly string[]) =>
    circuit(({ vehicle }) => {
      for (const id of links) delete vehicle.links?.[id];
    });
  const added = (found: ReturnType<typeof circuit>) =>
    found.edges
      .filter(({ id }) => id.includes('>') && !id.startsWith('ground.'))
      .map(({ id, kind, from, to }) => [id, kind, from, to]);

  test('are put in place: the strap of its battery, the case and the lead of its alternator', () => {
    expect(added(without())).toEqual([]);
    expect(added(without('strap'))).toEqual([['battery.NEG>body', 'joint', 'battery.NEG', 'body']]);
    expect(added(without('block'))).toEqual([['alternator.CASE>body', 'joint', 'alternator.CASE', 'body']]);
    expect(added(without('charge'))).toEqual([
      ['alternator.B+>battery.POS', 'joint', 'alternator.B+', 'battery.POS'],
    ]);
  });

  test('are told by their posts, of the vehicle alone', () => {
    const posts = (found: ReturnType<typeof circuit>, id: string) =>
      unlinkedPosts(
        found.job,
        one(found.sources, ({ device }) => device.id === id),
      );
    expect(posts(without('strap'), 'battery')).toEqual(['battery.NEG']);
    expect(posts(without('strap', 'charge', 'block'), 'alternator')).toEqual([
      'alternator.B+',
      'alternator.CASE',
    ]);
    expect(posts(without(), 'battery')).toEqual([]);
    const own = circuit(({ job }) => {
      job.devices.own = { part: 'agm', in: 'boot' };
    });
    expect(posts(own, 'own')).toEqual([]);
    expect(added(own)).toEqual([]);
  });

  test('lead to no battery where there is none', () => {
    const bare = circuit((content) => {
      const { vehicle, job } = content;
      vehicle.links = {};
      delete vehicle.fitted.battery;
      delete job.links.feed;
    });
    expect(added(bare).map(([id]) => id)).toEqual(['alternator.CASE>body']);
  });
});
