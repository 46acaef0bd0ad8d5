import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { ShopFolder } from '../shop-folder.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());
const enters = (count: number): readonly string[] => Array.from({ length: count }, () => '');
const path = 'content/jobs/second.yaml';

describe('new', () => {
  beforeAll(async () => {
    const ran = await shop.run('new', 'second', '--issued-on', '2026-02-09', '--title', 'Board: "left"');
    expect(ran).toMatchObject({ status: 0, out: path, told: 'fill it in, then: rackleaf check second' });
  });

  test('writes a file that reads without errors, and whose findings tell what is left to do', async () => {
    const { status, out, told } = await shop.run('check', 'second', '--json');
    expect(told).toBe('');
    expect(JSON.parse(out)).toMatchObject({ problems: [], jobs: [{ id: 'second' }] });
    expect(out).toMatch(/"rule": "job-without-devices",\s*"level": "stop"/);
    expect(status).toBe(1);
  });

  test('names places, terminals, ground points, spaces, sound points and routes of the vehicle', () => {
    const text = shop.read(path);
    for (const name of ['# Places:', 'bay (', 'radio.', 'body.cargo', 'well (', 'p1', 'left-sill ('])
      expect(text).toContain(name);
    expect(text).toContain('title: "Board: \\"left\\""');
    expect(text).toContain('issued-on: 2026-02-09');
    expect(text).toContain('vehicle: wagon\nspace: well\n');
  });

  test.each([
    [['new', 'second'], /"second" is there already: a name is never used twice/],
    [['new', 'Third Job'], /"Third Job" is not an id/],
    [['new', 'aux'], /"aux" is a name that Windows keeps for itself/],
    [['new', 'third', '--vehicle', 'wagn'], /no vehicle "wagn"; did you mean "wagon"\?/],
    [['new', 'third', '--space', 'wel'], /no space of wagon "wel"; did you mean "well"\?/],
    [
      ['new', 'third', '--speaker', 'mid, midrange-a, boot, , , , , 3 dB'],
      /how much quieter than the others is above zero; write a level such as -3 dB/,
    ],
    [['new', 'third', '--issued-on', '9.2.2026'], /--issued-on "9\.2\.2026": date is not a date: write/],
    [['new'], /say what: rackleaf new shop, vehicle, part, shelf or job/],
    [['new', 'jbo', 'third'], /there is no new jbo; did you mean rackleaf new job third\?/],
    [['new', 'third', '--units', 'mm'], /--units does not go with new job/],
  ] as const)('%j is refused, and nothing is written', async (line, says) => {
    const { status, told } = await shop.run(...line);
    expect(status).toBe(2);
    expect(told).toMatch(says);
    expect(() => shop.read('content/jobs/third.yaml')).toThrow(/ENOENT/);
  });

  test('builds in a component set and holds a box by one row each', async () => {
    const set = ['--kind', 'speaker', '--title', 'Set', '--case', '6 in, 6 in, 3 in, 1 kg'];
    await shop.run(
      ...['new', 'part', 'set-six', ...set],
      ...['--facts', 'component, 90 W, , , C1, 4 ohm, , set-screw'],
      ...['--set', '3 kHz, 2 in, 1 in, 0.1 kg, 4 in, 3 in, 1 in, 0.2 kg, set-screw'],
    );
    const row = (more: string) => `front, set-six, bay, , amp, ${more}`;
    const line = ['--device', 'amp, amp-a'];
    await shop.run('new', 'with-set', ...line, '--speaker', row('bay, strap'));
    const text = shop.read('content/jobs/with-set.yaml');
    for (const one of [
      '  front-crossover: { part: set-six-crossover, in: bay, driven-by: amp }',
      '  front: { part: set-six, in: bay, driven-by: front-crossover, held: strap }',
      '  front-tweeter: { part: set-six-tweeter, in: bay, driven-by: front-crossover }',
    ])
      expect(text.split('\n')).toContain(one);
    // A crossover that lies elsewhere has its own row, and drives what the row of the set tells.
    const apart = ['--speaker', 'filters, set-six-crossover, bay, , amp'];
    await shop.run('new', 'set-apart', ...line, ...apart, '--speaker', 'front, set-six, bay, , filters, bay');
    const lines = shop.read('content/jobs/set-apart.yaml').split('\n');
    for (const one of [
      '  filters: { part: set-six-crossover, in: bay, driven-by: amp }',
      '  front: { part: set-six, in: bay, driven-by: filters }',
      '  front-tweeter: { part: set-six-tweeter, in: bay, driven-by: filters }',
    ])
      expect(lines).toContain(one);
    expect(lines.join()).not.toContain('front-crossover');
    // Both speakers of a set play on one channel.
    await shop.run('new', 'set-quieter', ...line, '--speaker', row('bay, , -3 dB'));
    const quieter = shop.read('content/jobs/set-quieter.yaml');
    expect(
      [...quieter.matchAll(/^ {2}(\S+): \{ part: set-six.*level: "-3 dB" \}/gm)].map(([, name]) => name),
    ).toEqual(['front', 'front-tweeter']);
    const lost = await shop.run('new', 'no-place', ...line, '--speaker', row('bya'));
    expect(lost.told).toContain('there is no place "bya"; did you mean "bay"?');
    const bare = await shop.run('new', 'no-set', ...line, '--speaker', 'front, woofer-a, bay, , amp, bay');
    expect(bare.told).toContain('there is no woofer-a-tweeter and no woofer-a-crossover');
  });

  test('has a filter in the lead of a tweeter stand with the tweeter, beside whose woofer it hangs', async () => {
    await shop.run(
      ...[
        'new',
        'part',
        'set-lead',
        '--kind',
        'speaker',
        '--title',
        'Set',
        '--case',
        '6 in, 6 in, 3 in, 1 kg',
      ],
      ...['--facts', 'component, 90 W, , , C1, 4 ohm, , set-screw'],
      '--set',
      '4 kHz, 2 in, 1 in, 0.1 kg, 2 in, 1 in, 1 in, 0.1 kg, supplied-lead, 18 AWG 12 in, , , , 1, yes, yes, 1 3/4 in',
    );
    expect(shop.read('content/parts/set-lead.yaml')).toMatch(
      /band: tweeter\n(?: {4}.*\n)*? {4}cut-out: 1 3\/4 in\n/,
    );
    const row = 'front, set-lead, bay, , amp, boot';
    await shop.run('new', 'in-lead', '--device', 'amp, amp-a', '--speaker', row);
    const lines = shop.read('content/jobs/in-lead.yaml').split('\n');
    for (const one of [
      '  front: { part: set-lead, in: bay, driven-by: amp }',
      '  front-crossover: { part: set-lead-crossover, in: boot, driven-by: front }',
      '  front-tweeter: { part: set-lead-tweeter, in: boot, driven-by: front-crossover }',
    ])
      expect(lines).toContain(one);
  });

  test('tells the room for a board in the units of the shop, and no more of it than there is', async () => {
    const person = new Typed('Room', 'amp, amp-a', ...enters(3));
    await shop.answered(person, 'new', 'job', 'room', '--vehicle', 'wagon');
    // 800 mm are 31.496 in and 500 mm are 19.685 in: the next sixteenths above them are not there.
    expect(person.said.join('\n')).toContain('The space is 31 7/16 in wide and 19 5/8 in high.');
  });

  test('does not take the name of a job whose frozen plans are still there', async () => {
    shop.write('content/jobs/gone/A.plan.json', '{}');
    expect((await shop.run('new', 'gone')).told).toMatch(/is there already/);
  });

  test('is dated by the day at this place where no date is given', () => {
    const now = new Date();
    const days = [-1, 0, 1].map((day) =>
      new Date(now.getTime() + day * 86_400_000).toISOString().slice(0, 10),
    );
    expect(days).toContain(realEffects('.').today());
  });

  describe('of a source with a front and a rear pair, for places whose row nothing tells', () => {
    const line = [
      '--vehicle',
      'wagon',
      '--device',
      'amp, amp-a',
      '--speaker',
      'mid, midrange-a, boot, , amp',
    ];
    beforeAll(() => {
      shop.change(
        'content/parts/all.yaml',
        '      OUT1: { role: signal-out, joint: phono, signal: 4 V }\n      OUT2:',
        '      FL: { role: signal-out, joint: phono, signal: 4 V }\n      OUT1: { role: signal-out, joint: phono, signal: 4 V }\n      OUT2:',
      );
      shop.change(
        'content/parts/all.yaml',
        '  bolt-a:',
        '  midrange-a: { kind: speaker, title: Midrange, size: { width: 100 mm, depth: 80 mm, height: 40 mm }, mass: 1 kg, band: midrange, power: 50 W, lowest-frequency: 80 Hz, coils: { C1: { positive: C1+, negative: C1-, nominal: 4 ohm } }, terminals: { C1+: { role: coil-positive }, C1-: { role: coil-negative } } }\n  bolt-a:',
      );
    });

    test('asks once which pair they play, with what each output gives, and writes it', async () => {
      const person = new Typed('Pairs', 'mid, raer', 'mid, rear', ...enters(3));
      await shop.answered(person, 'new', 'job', 'pairs', ...line);
      expect(person.said.join('\n')).toContain('To be told: mid');
      expect(person.said.join('\n')).toMatch(/radio gives FL front left, OUT1 front right, OUT2 rear left/);
      expect(person.refused.join()).toMatch(/raer.*did you mean rear/);
      expect(shop.read('content/jobs/pairs.yaml')).toContain(
        '  mid: { part: midrange-a, in: boot, driven-by: amp, signal: rear }',
      );
    });

    test('takes what the vehicle came with for what drives them', async () => {
      const driven = (driver: string) => line.with(-1, `mid, midrange-a, boot, , ${driver}`);
      const told = await shop.run('new', 'job', 'by-radio', ...driven('rdio'));
      expect([told.status, told.told]).toEqual([2, expect.stringContaining('did you mean "radio"')]);
      await shop.run('new', 'job', 'by-radio', ...driven('radio'), '--signal', 'mid, front');
      expect(shop.read('content/jobs/by-radio.yaml')).toContain('driven-by: radio');
    });

    test('takes it by a flag, and none where the row of the places tells it', async () => {
      const flagged = [...line, '--signal', 'mid, front'];
      await shop.run('new', 'job', 'flagged', ...flagged);
      expect(shop.read('content/jobs/flagged.yaml')).toContain('signal: front');
      shop.change('content/vehicles/wagon.yaml', 'boot: { title: Boot,', 'boot: { title: Boot, row: rear,');
      const told = await shop.run('new', 'job', 'needless', ...flagged);
      expect([told.status, told.told]).toEqual([2, expect.stringContaining('is told already, by the rows')]);
    });
  });
});
