import { describe, expect, test } from 'vitest';
import { ratedPointName } from '../../../../lib/model/operating-points.ts';
import type { OperatingPoint, PlanChannel } from '../../../../lib/model/plan/index.ts';
import type { PlannedChannel } from '../../../../lib/plan/audio/audio-channels.ts';
import { PlanBook } from '../../../../lib/plan/plan-book.ts';
import { planCharging } from '../../../../lib/plan/power/charging.ts';
import { deviceLoads } from '../../../../lib/plan/power/device-loads.ts';
import { bandedDrops } from '../../../../lib/plan/power/drop-bands.ts';
import { deviceDrops } from '../../../../lib/plan/power/feed-and-ground-drop.ts';
import { operatingPoints } from '../../../../lib/plan/power/operating-points.ts';
import { planPower } from '../../../../lib/plan/power/plan-power.ts';
import type { SizedFuse } from '../../../../lib/plan/power/sizing/fuse-sizing.ts';
import { solvedPoints } from '../../../../lib/plan/power/solved-points.ts';
import { sourceReadings } from '../../../../lib/plan/power/source-readings.ts';
import { samplePlan } from '../../../publish/sample/sample-plan.ts';
import { byId, one, partIn } from '../../../rules/case.ts';
import type { Written } from '../../../rules/content.ts';
import { settledPower } from '../settled-power.ts';
import { cabled, charged, isolated } from '../two-batteries.ts';
import { planned, point } from './planned-supply.ts';

const [sampleChannel] = samplePlan().audio.channels;
if (!sampleChannel) throw new Error('The sample plan has a channel.');
const channelBase: PlanChannel = sampleChannel;

describe('what an amplifier draws for its channels', () => {
  const base = channelBase;
  const channel = (name: string, own: Partial<PlanChannel>): PlannedChannel => ({
    channel: { ...base, id: `amp.${name}`, amplifier: 'amp', wiring: '', speakers: [], powerW: null, ...own },
    ...{ load: null, wiring: null },
  });
  const drawn = (...channels: readonly PlannedChannel[]) => {
    const { job, paths } = settledPower(cabled);
    const book = new PlanBook();
    const loads = deviceLoads(job, paths, channels, book);
    const traces = book.traces();
    return { ...one(loads, ({ item }) => item === 'amp'), traces };
  };

  test('is the power of each into its load; of a load that is not known the most that its maker publishes', () => {
    const power = (...channels: readonly PlannedChannel[]) => {
      const { powerW, traces } = drawn(...channels);
      const inputs = traces['power.loads.amp.powerW']?.inputs.map(({ name, value }) => [name, value]);
      return { powerW, inputs };
    };
    const wired = { speakers: ['left'], wiring: 'one coil' };
    expect(power(channel('1', { ...wired, powerW: 50 }), channel('2', { ...wired, powerW: 20 }))).toEqual({
      ...{
        powerW: 70,
        inputs: [
          ['amp.1', 50],
          ['amp.2', 20],
        ],
      },
    });
    // Its maker publishes 75 W at 4 ohm, and nothing else.
    expect(power(channel('1', { ...wired, powerW: 50 }), channel('2', wired))).toEqual({
      ...{
        powerW: 125,
        inputs: [
          ['amp.1', 50],
          ['amp.2', 75],
        ],
      },
    });
    for (const known of [{ speakers: ['left'] }, { wiring: 'one coil' }])
      expect(power(channel('1', known)).powerW).toBe(75);
    // What nothing is wired to plays nothing.
    expect(power(channel('1', {}), channel('2', { powerW: 50 }))).toEqual({
      ...{ powerW: 50, inputs: [['amp.2', 50]] },
    });
    expect(power({ ...channel('1', { powerW: 50 }), channel: { ...base, amplifier: 'other' } }).powerW).toBe(
      0,
    );
  });

  test('with music is its average output, told with where that comes from', () => {
    const { musicDuty, traces } = drawn(channel('1', { powerW: 50, speakers: ['tweeter'] }));
    // Common practice, no source: an eighth of rated power for music.
    expect(musicDuty).toBe(1 / 8);
    expect(traces['power.loads.amp.musicDuty']).toMatchObject({
      value: 1 / 8,
      rule: 'music-duty',
      mark: 'cp',
    });
  });
});

describe('a fuse of the plan', () => {
  const found = (change: (fuse: SizedFuse) => Partial<SizedFuse> = () => ({})) => {
    const sizing = settledPower(cabled);
    const book = new PlanBook();
    const fuses = sizing.fuses.map((fuse) => ({ ...fuse, ...change(fuse) }));
    const power = planPower(sizing, { ...sizing, fuses }, book);
    return { sizing, power, traces: book.traces() };
  };

  test('has for its least ampacity that of the weakest conductor that it protects, and none where it protects none', () => {
    const { power, traces } = found();
    expect(power.fuses.filter(({ ratingA }) => ratingA !== null).length).toBeGreaterThan(1);
    for (const { id, protects, leastAmpacityA, ratingA } of power.fuses) {
      const ampacities = protects.map((wire) => byId(power.conductors, wire).ampacityA);
      expect(leastAmpacityA, id).toBe(Math.min(...ampacities));
      expect(leastAmpacityA, id).toBeGreaterThan(0);
      if (ratingA === null) continue;
      const inputs = traces[`power.fuses.${id}.ratingA`]?.inputs ?? [];
      expect(inputs.at(-1), id).toMatchObject({ name: 'least ampacity', value: leastAmpacityA });
    }
    const bare = found(() => ({ protects: [] }));
    for (const { id, leastAmpacityA } of bare.power.fuses) {
      expect(leastAmpacityA, id).toBeNull();
      const inputs = bare.traces[`power.fuses.${id}.ratingA`]?.inputs ?? [];
      expect(
        inputs.map(({ name }) => name),
        id,
      ).not.toContain('least ampacity');
    }
  });

  test('is told as given where the job gives it, and as computed with its reason where it does not', () => {
    const own = ({ power, traces }: ReturnType<typeof found>) => {
      const { chosen, reason } = byId(power.fuses, 'block.OUT1');
      return { chosen, reason, origin: traces['power.fuses.block.OUT1.ratingA']?.origin };
    };
    const computed = own(found(() => ({ givenA: null })));
    expect(computed).toMatchObject({ chosen: 'computed', origin: 'computed' });
    expect(computed.reason).not.toContain('given');
    expect(own(found(() => ({ givenA: 30 })))).toEqual({
      ...{ chosen: 'given', origin: 'given', reason: 'given: 30 A' },
    });
    expect(own(found(() => ({ givenA: null, choice: null }))).reason).toBe('no rating could be computed');
  });

  test('stands as far from its battery as the conductors between them are long, each told', () => {
    const { power, traces, sizing } = found();
    const { distanceM } = byId(power.fuses, 'main-fuse');
    expect(distanceM).toBe(sizing.lengths('feed').lengthM);
    expect(traces['power.fuses.main-fuse.distanceM']).toMatchObject({
      formula: 'the sum of the conductors between source and fuse',
      inputs: [{ name: 'feed', value: distanceM, unit: 'm' }],
    });
  });

  test('tells the room of a holder that an alternative needs, and none where it needs none', () => {
    const areas = (boardAreaM2: number | null) =>
      found(({ choice }) => ({
        ratingA: 10,
        choice: choice?.chosen
          ? { ...choice, chosen: { ...choice.chosen, ratingA: 25, boardAreaM2 } }
          : choice,
      })).power.fuses.flatMap(({ alternatives }) => alternatives.slice(0, 1).map(({ areaM2 }) => areaM2));
    expect(areas(0.012).length).toBeGreaterThan(0);
    expect(new Set(areas(0.012))).toEqual(new Set([0.012]));
    expect(new Set(areas(null))).toEqual(new Set([0]));
  });
});

test('a conductor that could not be judged carries nothing that anybody may count on', () => {
  const sizing = settledPower(cabled);
  const conductors = new Map(
    [...sizing.conductors].map(([id, sized]) => [id, id === 'amp-feed' ? { ...sized, judged: null } : sized]),
  );
  const { conductors: all } = planPower(sizing, { ...sizing, conductors }, new PlanBook());
  expect(byId(all, 'amp-feed')).toMatchObject({ ampacityA: 0, cautionA: 0, limits: [] });
  const judged = byId(all, 'dsp-feed');
  expect(judged.ampacityA).toBeGreaterThan(0);
  expect(judged.cautionA).toBeLessThanOrEqual(judged.ampacityA);
  expect(judged.limits.length).toBeGreaterThan(0);
});

describe('drops that can not be told', () => {
  const network = () => settledPower(cabled);
  const rated = operatingPoints.find(({ name }) => name === ratedPointName);
  const music = operatingPoints.find(({ name }) => name === 'music');
  if (!rated || !music) throw new Error('Both are points.');
  /** The same where no conductor joins the feed of anything to a battery. */
  const unjoined = (input: ReturnType<typeof network>) => ({
    ...input,
    paths: {
      ...input.paths,
      joinedTo: (node: string) => (node.endsWith('B+') ? new Set([node]) : input.paths.joinedTo(node)),
    },
  });

  test('of a device whose terminals have no voltage, or of a circuit without a battery, are none', () => {
    const input = network();
    const solved = solvedPoints(input)(rated);
    expect(deviceDrops(input, solved)).toHaveLength(3);
    const without = (node: string): OperatingPoint => ({
      ...solved,
      nodes: solved.nodes.filter(({ id }) => id !== node),
    });
    const items = (at: OperatingPoint) => deviceDrops(input, at).map(({ item }) => item);
    expect(items(without('amp.B+'))).not.toContain('amp');
    expect(items(without('amp.GND'))).not.toContain('amp');
    expect(items(without('amp.GND'))).toContain('dsp');
    expect(deviceDrops({ ...input, circuit: { ...input.circuit, sources: [] } }, solved)).toEqual([]);
  });

  test('say which conductor is missing, and leave out what would follow', () => {
    const input = unjoined(network());
    const amp = one(deviceDrops(input, solvedPoints(input)(rated)), ({ item }) => item === 'amp');
    expect(amp).toMatchObject({ feedDropV: null, share: null, groundDropV: expect.any(Number) });
    expect(amp.unknown).toBe(
      'the drop of the feed is not known, since no conductor joins amp.B+ to battery.POS',
    );
    const whole = deviceDrops(network(), solvedPoints(input)(rated));
    for (const drop of whole) expect(drop).not.toHaveProperty('unknown');
  });

  test('have no band on that side, and none at all where the supply has no solution at one of its ends', () => {
    const input = unjoined(network());
    const solved = solvedPoints(input);
    const [drop] = bandedDrops(input, [solved(music)], solved);
    expect(drop?.bands).toMatchObject({ feedDropV: null, groundDropV: { from: expect.any(Number) } });
    const plain = network();
    const whole = solvedPoints(plain);
    const dark: typeof whole = (state, end) => {
      const at = whole(state, end);
      return end === 'weak' ? { ...at, state: 'no-solution' } : at;
    };
    expect(bandedDrops(plain, [whole(music)], whole)[0]).toHaveProperty('bands');
    expect(bandedDrops(plain, [whole(music)], dark)[0]).not.toHaveProperty('bands');
  });

  test('have parts of one size in the order of their names', () => {
    const input = network();
    for (const { parts = [] } of deviceDrops(input, solvedPoints(input)(rated)))
      for (const [k, { dropV, of }] of parts.entries()) {
        const next = parts[k + 1];
        if (next && next.dropV === dropV) expect(of <= next.of).toBe(true);
      }
  });

  test('are of no reading of a source whose terminals have no voltage', () => {
    const input = settledPower(isolated);
    const solved = solvedPoints(input);
    const what = (blank: string) => {
      const blanked: typeof solved = (state, end) => {
        const at = solved(state, end);
        return {
          ...at,
          nodes: at.nodes.map((node) => (node.id === blank ? { ...node, voltageV: null } : node)),
        };
      };
      return sourceReadings(input, blanked, new PlanBook()).map((reading) => reading.what);
    };
    expect(what('nothing')).toContain('contact-drop');
    expect(what('isolator.A')).not.toContain('contact-drop');
    expect(what('isolator.A')).toContain('contact-current');
  });
});

describe('what the vehicle has in an operating point', () => {
  test('with the engine off is what its own source units draw that the job does not feed', () => {
    const takes = (change: (content: Written) => void) =>
      point(planned(change).power, 'engine-off').elements.find(({ of }) => of === 'vehicle');
    expect(takes(() => {})).toBeUndefined();
    const head = takes(({ vehicle }) => {
      vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
    });
    expect(head).toMatchObject({ model: 'current', from: 'battery.POS', to: 'battery.NEG' });
    expect(head && 'givenA' in head ? head.givenA : 0).toBeGreaterThan(0);
  });

  test('is no second battery whose negative pole is joined to nothing', () => {
    const input = settledPower(isolated);
    const of = (links: readonly string[]) => {
      const edges = input.circuit.edges.filter(({ id }) => !links.includes(id));
      const state = one(operatingPoints, ({ name }) => name === 'engine-off');
      return solvedPoints({ ...input, circuit: { ...input.circuit, edges } })(state).elements.map(
        ({ id }) => id,
      );
    };
    expect(of([])).toContain('second:emf');
    expect(of(['second-ground'])).not.toContain('second:emf');
  });

  test('is no device behind a contact that is open, and each once it is closed', () => {
    const input = settledPower(isolated);
    const edges = input.circuit.edges.filter(({ id }) => id !== 'second-tail');
    const loadsAt = (wanted: string) => {
      const state = one(operatingPoints, ({ name }) => name === wanted);
      const { elements } = solvedPoints({ ...input, circuit: { ...input.circuit, edges } })(state);
      return elements.flatMap(({ of, kind }) => (kind === 'load' ? [of] : []));
    };
    expect(loadsAt('music')).toEqual(expect.arrayContaining(['amp', 'dsp', 'radio']));
    for (const id of ['amp', 'dsp', 'radio']) expect(loadsAt('engine-off')).not.toContain(id);
  });

  test('is half of the system where a battery of 12 V stands behind a charger in 24 V', () => {
    const input = settledPower((content) => {
      charged(content);
      content.vehicle['system-voltage'] = '24 V';
      content.parts['agm-24'] = { ...partIn(content, 'agm', 'battery'), voltage: '24 V' };
      Object.assign(content.vehicle.fitted, {
        battery: { part: 'agm-24', zone: 'engine-bay', side: 'left' },
      });
    });
    const off = solvedPoints(input)(one(operatingPoints, ({ name }) => name === 'engine-off'));
    const emfOf = (id: string) => {
      const element = one(off.elements, ({ of, kind }) => of === id && kind === 'source');
      return 'emfV' in element ? (element.emfV ?? Number.NaN) : Number.NaN;
    };
    expect(emfOf('second')).toBeCloseTo(emfOf('battery') / 2, 9);
  });
});

describe('the balance of a charger', () => {
  test('has what it draws for a battery that is run down from the voltage at its own input', () => {
    const input = settledPower(charged);
    const solved = solvedPoints(input);
    const points = operatingPoints.map((state) => solved(state));
    const sides = { circuit: input.circuit, islands: input.paths.islands };
    const balanceOf = (at: readonly OperatingPoint[]) => planCharging(input.job, sides, at, new PlanBook());
    const [charger] = one(balanceOf(points), ({ name }) => name === 'cruise').chargers ?? [];
    expect(charger?.flatA).toBeGreaterThan(30);
    // What stands across other devices says nothing of it.
    const elsewhere = points.map((at) => ({
      ...at,
      elements: at.elements.map((element) =>
        element.kind === 'load' && element.of !== 'charger' ? { ...element, dropV: 6 } : element,
      ),
    }));
    const [again] = one(balanceOf(elsewhere), ({ name }) => name === 'cruise').chargers ?? [];
    expect(again?.flatA).toBe(charger?.flatA);
    // It draws the same power from any voltage: from half of it twice the current.
    const halved = points.map((at) => ({
      ...at,
      elements: at.elements.map((element) => ({ ...element, dropV: (element.dropV ?? 0) / 2 })),
    }));
    const [half] = one(balanceOf(halved), ({ name }) => name === 'cruise').chargers ?? [];
    expect(half?.flatA).toBeCloseTo(2 * (charger?.flatA ?? Number.NaN), 6);
  });

  test('counts alternators alone for what charges, and none with the engine off', () => {
    const { power } = planned();
    const of = (name: string) => one(power.charging, (regime) => regime.name === name).alternatorA;
    const { job } = settledPower(cabled);
    const { spec } = byId(job.devices, 'alternator');
    const ratingA = spec?.kind === 'alternator' ? spec.rating : Number.NaN;
    expect(of('idle')).toBeCloseTo(ratingA * job.rules['alternator-idle-share'].value, 9);
    expect(of('cruise')).toBeCloseTo(ratingA * job.rules['alternator-cruise-share'].value, 9);
    expect(of('engine-off')).toBe(0);
  });
});
