import { afterAll, describe, expect, test } from 'vitest';
import { filterOffers } from '../../../lib/audio/filter/filter-offers.ts';
import { realEffects } from '../../../lib/commands/effects.ts';
import { inLineFilter } from '../../../lib/model/kinds/crossover.ts';
import { kinds, partFacts } from '../../../lib/model/kinds/index.ts';
import { awgSize } from '../../../lib/model/quantity/wire-size.ts';
import { contentFiles, readCatalogue, readContent } from '../../../lib/read/read-content.ts';
import { ShopFolder } from '../shop-folder.ts';
import { leafletFlags, leaflets } from './leaflets.ts';

const folder = new ShopFolder();
afterAll(() => folder.remove());

describe('new part', () => {
  test('its help names every kind of part', async () => {
    const { out } = await folder.run('new', '--help');
    const [, listed = ''] = /--kind +of a part: ([\s\S]*?)\n +--/.exec(out) ?? [];
    expect(listed.split(/,\s+/)).toEqual(Object.keys(kinds));
  });

  test.each(Object.entries(leaflets))(
    'a leaflet of the kind %s makes a part that reads',
    async (kind, leaflet) => {
      const name = `own-${kind}`;
      const line = [
        'new',
        'part',
        name,
        '--kind',
        kind,
        '--title',
        `Invented ${kind}`,
        ...leafletFlags(leaflet),
      ];
      const { status, out, told } = await folder.run(...line);
      expect([told.replace(/^the leaflet may still tell:\n(?: {2}.*\n?)*/, ''), status]).toEqual(['', 0]);
      expect(out).toBe(`content/parts/${name}.yaml`);
      const { parts, problems } = readContent(await realEffects(folder.root).readContent());
      expect(problems).toEqual([]);
      expect(parts[name]).toMatchObject({ kind, title: `Invented ${kind}` });
    },
  );

  test.each(['battery', 'alternator', 'source-unit'] as const)(
    'a %s that stays where a vehicle has it needs no measures',
    async (kind) => {
      const { case: _, ...leaflet } = leaflets[kind];
      const line = ['new', 'part', `fitted-${kind}`, '--kind', kind, '--title', 'Fitted'];
      const { status, told } = await folder.run(...line, ...leafletFlags(leaflet));
      expect(status).toBe(0);
      expect(told).not.toContain('error');
      const { parts } = readContent(await realEffects(folder.root).readContent());
      expect(parts[`fitted-${kind}`]).toMatchObject({ kind });
    },
  );

  test('a speaker needs its measures', async () => {
    const { case: _, ...leaflet } = leaflets.speaker;
    const line = ['new', 'part', 'no-case', '--kind', 'speaker', '--title', 'Speaker'];
    const { status, told } = await folder.run(...line, ...leafletFlags(leaflet));
    expect(status).toBe(2);
    expect(told).toContain('--case is needed');
  });

  test('a component set becomes woofer, tweeter and crossover, each with what it is computed by', async () => {
    const line = ['new', 'part', 'set-six', '--kind', 'speaker', '--title', 'Component set, 6 1/2 in'];
    const { status, out, told } = await folder.run(
      ...line,
      ...['--case', '6 1/2 in, 6 1/2 in, 2 3/4 in, 1.2 kg'],
      ...['--facts', 'component, 90 W, 70 Hz, , C1, 4 ohm, , screw-clamp, 18 AWG to 12 AWG'],
      ...[
        '--set',
        '3 kHz, 2 in, 7/8 in, 0.09 kg, 4 in, 3 in, 1 in, 0.2 kg, set-screw, up to 12 AWG, 8 mm, 80 W, , 2, yes, , , 20 AWG 300 mm',
      ],
    );
    expect([status, out]).toEqual([0, 'content/parts/set-six.yaml']);
    expect(told).toContain('with the places of set-six-tweeter at its end; set-six-crossover goes where');
    const { parts, problems } = readContent(await realEffects(folder.root).readContent());
    expect(problems).toEqual([]);
    expect(parts['set-six']).toMatchObject({ band: 'midbass', power: 90, 'lowest-frequency': 70 });
    // Whatever the set is called, a woofer too: the tweeter is no woofer.
    expect(parts['set-six-tweeter']?.title).toBe('Tweeter, in one set with Component set, 6 1/2 in');
    expect(parts['set-six-tweeter']).toMatchObject({ band: 'tweeter', power: 90, mass: 0.09 });
    expect(parts['set-six-crossover']).toMatchObject({
      kind: 'crossover',
      ways: { W: { toHz: 3000 }, T: { fromHz: 3000 } },
      order: 2,
      load: 4,
      power: 80,
      terminals: {
        'IN+': { role: 'coil-positive', joint: 'set-screw', strip: 0.008 },
        'T-': { joint: 'supplied-lead', lead: awgSize('20'), 'lead-length': 0.3 },
      },
    });
    expect(parts['set-six-tweeter']).toMatchObject({
      terminals: { 'C1+': { joint: 'supplied-lead', lead: awgSize('20'), 'lead-length': 0.3 } },
    });
  });

  test.each([
    ['corners, 6 mm, 4 mm, TWEETER 0 / -3 dB', 4, true],
    [', , , TWEETER 0 / -3 dB', 0, true],
    ['corners, 6 mm, 4 mm', 4, false],
  ] as const)('a set tells the holes and the jumper of its crossover: %s', async (told, holes, hasJumper) => {
    const id = `set-held-${holes}-${hasJumper ? 'jumper' : 'plain'}`;
    const { status } = await folder.run(
      ...['new', 'part', id, '--kind', 'speaker', '--case', '165 mm, 165 mm, 58 mm, 1 kg'],
      ...['--facts', 'component, 70 W, , , C1, 4 ohm, 3.3 ohm, blade-tab'],
      '--set',
      `3 kHz, 42 mm, 22 mm, 0.05 kg, 100 mm, 70 mm, 30 mm, 0.2 kg, set-screw, 18 AWG to 12 AWG, 9 mm, , , 2, , , , , ${told}`,
    );
    expect(status).toBe(0);
    const { parts, problems } = readContent(await realEffects(folder.root).readContent());
    expect(problems).toEqual([]);
    const { [`${id}-crossover`]: made } = parts;
    if (made?.kind !== 'crossover') throw new Error('There is no crossover.');
    expect(made['mounting-holes'] ?? []).toHaveLength(holes);
    expect(made.controls.TWEETER).toEqual(
      hasJumper
        ? expect.objectContaining({ form: 'switch', positions: ['0 dB', '-3 dB'], safe: '0 dB' })
        : undefined,
    );
  });

  test('a jumper that tells no levels is told how it is written', async () => {
    const { told } = await folder.run(
      ...['new', 'part', 'set-jumped', '--kind', 'speaker', '--case', '165 mm, 165 mm, 58 mm, 1 kg'],
      ...['--facts', 'component, 70 W, , , C1, 4 ohm, 3.3 ohm, blade-tab'],
      '--set',
      '3 kHz, 42 mm, 22 mm, 0.05 kg, 100 mm, 70 mm, 30 mm, 0.2 kg, set-screw, , , , , 2, , , , , , , , high low',
    );
    expect(told).toContain('write its name and its levels, as delivered first, TWEETER 0 / -3 dB');
  });

  test.each([
    { way: ['W, up to 3 kHz', 'T, from 3 kHz'], names: ['IN+', 'IN-', 'W+', 'W-', 'T+', 'T-'] },
    { way: ['HF, from 2.5 kHz'], names: ['IN+', 'IN-', 'HF+', 'HF-'] },
  ])('a crossover of which no terminals are told has those of its ways $names', async ({ way, names }) => {
    const { terminal: _, band: __, ...leaflet } = leaflets.crossover;
    const id = `bare-crossover-${way.length}`;
    const line = ['new', 'part', id, '--kind', 'crossover', '--title', 'Crossover'];
    const { status } = await folder.run(...line, ...leafletFlags({ ...leaflet, band: way }));
    expect(status).toBe(0);
    const files = await realEffects(folder.root).readContent();
    expect(files.find(({ path }) => path.endsWith(`${id}.yaml`))?.text).toContain(
      '# terminals: IN, and a pair for each of its ways.',
    );
    const { parts, problems } = readContent(files);
    expect(problems).toEqual([]);
    const { [id]: made } = parts;
    expect(Object.keys(made?.kind === 'crossover' ? made.terminals : {})).toEqual(names);
  });

  test('a set whose filter lies in the lead of its tweeter leaves its woofer without one', async () => {
    const { status } = await folder.run(
      ...['new', 'part', 'set-lead', '--kind', 'speaker', '--case', '165 mm, 165 mm, 58 mm, 1 kg'],
      ...['--facts', 'component, 70 W, , , C1, 4 ohm, 3.3 ohm, blade-tab, , , 0.35 mH'],
      '--set',
      '4 kHz, 42 mm, 22 mm, 0.05 kg, 30 mm, 14 mm, 14 mm, 0.02 kg, supplied-lead, 18 AWG 600 mm, , 50 W, 50 W, 1, yes, yes',
    );
    expect(status).toBe(0);
    const { parts } = readContent(await realEffects(folder.root).readContent());
    const { 'set-lead': woofer, 'set-lead-crossover': filter } = parts;
    expect(woofer).toMatchObject({ coils: { C1: { inductance: 0.35e-3 } } });
    if (filter?.kind !== 'crossover') throw new Error('There is no filter.');
    expect(inLineFilter(filter)).toEqual({ fromHz: 4000, order: 1 });
    expect(filter.terminals['IN+']).toMatchObject({
      joint: 'supplied-lead',
      lead: awgSize('18'),
      'lead-length': 0.6,
    });
  });

  test('a menu with other slopes at some outputs has a row for these', async () => {
    const { menu: _, ...leaflet } = leaflets['source-unit'];
    const flags = leafletFlags({
      ...leaflet,
      menu: ['2, butterworth, 50 Hz, 160 Hz', '2 4, , 50 Hz, 160 Hz, OUT3 OUT4'],
    });
    const { status } = await folder.run('new', 'part', 'head-menus', '--kind', 'source-unit', ...flags);
    expect(status).toBe(0);
    const { parts } = readContent(await realEffects(folder.root).readContent());
    const head = parts['head-menus'];
    const facts = head ? partFacts(head) : null;
    if (head?.kind !== 'source-unit' || !facts) throw new Error('There is no head unit.');
    const orders = (name: string) =>
      filterOffers({ spec: head, facts }, name).map(({ pass, orders, toHz }) => [pass, orders, toHz]);
    expect(orders('OUT1')).toContainEqual(['low-pass', [2], 160]);
    expect(orders('OUT4')).toContainEqual(['low-pass', [2, 4], 160]);
  });

  test('the length of a lead is refused where a joint is no lead of the maker', async () => {
    const flags = [
      '--case',
      '6 in, 6 in, 3 in, 1 kg',
      '--facts',
      'coaxial, 60 W, , , C1, 4 ohm, , blade-tab, 18 AWG 24 in',
    ];
    const { told } = await folder.run('new', 'part', 'no-lead', '--kind', 'speaker', ...flags);
    expect(told).toContain(
      'a length is told of a lead that its maker supplies, whose joint is supplied-lead; else write the size alone, 18 AWG',
    );
  });

  test('tabs of a coil that differ are told in one cell, and each gets the receptacle of its width', async () => {
    const speaker = (id: string, cell: string, joint = 'blade-tab') =>
      folder.run(
        ...['new', 'part', id, '--kind', 'speaker', '--title', 'Coaxial'],
        ...['--case', '132 mm, 132 mm, 54 mm, 0.7 kg'],
        ...[
          '--facts',
          `coaxial, 50 W, 75 Hz, 114 mm, C1, 4 ohm, 3.4 ohm, ${joint}, 18 AWG to 12 AWG, , , ${cell}`,
        ],
      );
    expect((await speaker('two-tabs', '+ 6.3 mm - 2.8 mm')).status).toBe(0);
    expect((await speaker('like-tabs', '6.3 mm')).status).toBe(0);
    const { parts, problems } = readContent(await realEffects(folder.root).readContent());
    expect(problems.filter(({ where }) => where.file.includes('-tabs'))).toEqual([]);
    const pair = (plus: number, minus: number) => ({
      terminals: {
        'C1+': { role: 'coil-positive', joint: 'blade-tab', tab: expect.closeTo(plus, 9) },
        'C1-': { role: 'coil-negative', joint: 'blade-tab', tab: expect.closeTo(minus, 9) },
      },
      coils: { C1: { positive: 'C1+', negative: 'C1-', nominal: 4 } },
    });
    expect(parts['two-tabs']).toMatchObject(pair(0.0063, 0.0028));
    expect(parts['like-tabs']).toMatchObject(pair(0.0063, 0.0063));
    expect((await speaker('wrong-tabs', '+ 6.3 mm')).told).toContain('+ 6.3 mm - 2.8 mm, or 6.3 mm for both');
    expect((await speaker('post-tabs', '6.3 mm', 'binding-post')).told).toContain(
      'write the joint blade-tab, or leave the width out',
    );
  });

  test('of a component set what no leaflet tells is marked in the file', async () => {
    const { status } = await folder.run(
      ...['new', 'part', 'set-open', '--kind', 'speaker', '--title', 'Component set'],
      ...[
        '--case',
        '6 1/2 in, 6 1/2 in, 2 3/4 in, 1.2 kg',
        '--facts',
        'component, 90 W, , , C1, 4 ohm, , screw-clamp',
      ],
      ...['--set', '3 kHz, ?, ?, ?, ?, ?, ?, ?, ?'],
    );
    expect(status).toBe(2);
    const text = folder.read('content/parts/set-open.yaml');
    expect(text).toMatch(/# Still to be written: [^\n]*set-open-tweeter/);
    expect(text).toMatch(/# Still to be written: [^\n]*set-open-crossover/);
    folder.write('content/parts/set-open.yaml', 'rackleaf: 1\nparts: {}\n');
  });

  test('names every part that may have been meant by --like, those that begin so first', async () => {
    const bare = (id: string) => `  ${id}: { kind: grommet, title: G, hole: 10 mm, bore: 8 mm }\n`;
    folder.write('content/parts/rings.yaml', `rackleaf: 1\nparts:\n${bare('ring-65')}${bare('ring-525')}`);
    const { told } = await folder.run('new', 'part', 'x', '--like', 'ring-5', '--title', 'X');
    expect(told).toContain('there is no part "ring-5"; did you mean ring-525 or ring-65?');
  });

  test('takes over what another part of the shop says, but for what differs', async () => {
    const differs = 'capacity 74 Ah, Cold cranking: 680 A';
    const line = ['new', 'part', 'battery-74', '--like', 'own-battery', '--title', 'Battery, 74 Ah'];
    const { status, told } = await folder.run(...line, '--differs', differs);
    const [first, ...taken] = told.split('\n');
    expect([status, first]).toEqual([
      0,
      'as own-battery but for what was told: compare with its leaflet what is taken over:',
    ]);
    const text = folder.read('content/parts/battery-74.yaml');
    expect(text).toContain('# As own-battery, but for capacity, cold-cranking. Taken over as they are there');
    // What nobody told is listed with its figure, and what was told is not.
    expect(text).toMatch(/\n# {3}.*\d/);
    expect(text).not.toMatch(/\n# {3}.*\bcapacity /);
    const { parts } = readContent(await realEffects(folder.root).readContent());
    // All that is taken over is told, and what only its own maker measured is not taken over.
    for (const line of taken.filter((one) => one.startsWith('  ')))
      expect(text).toContain(`#   ${line.trim()}\n`);
    expect(told).toContain(
      'not taken over, since its own maker tells it: short-circuit; write it into the file',
    );
    expect(taken.join()).not.toMatch(/short-circuit \d/);
    expect(parts['battery-74']).not.toHaveProperty('short-circuit');
    const own = parts['own-battery'] as object as Record<string, unknown>;
    const { id: _, 'short-circuit': measured, ...like } = own;
    expect(measured).toBeDefined();
    expect(parts['battery-74']).toMatchObject({
      ...like,
      title: 'Battery, 74 Ah',
      capacity: 74 * 3600,
      'cold-cranking': 680,
    });
  });

  test('lists what is yes or no beside the figures, such as the lead inside a box', async () => {
    folder.write(
      'content/parts/box-like.yaml',
      `rackleaf: 1
parts:
  box-own:
    kind: enclosure
    title: "Sealed enclosure"
    size: { width: 400 mm, depth: 300 mm, height: 350 mm }
    mass: 9 kg
    terminals: { SUB: { role: coil, joint: binding-post, takes: 16 AWG to 10 AWG } }
    volume: 20 L
    loading: sealed
    opening: 282 mm
    lead-inside: true
`,
    );
    const { told } = await folder.run(
      'new',
      'part',
      'box-next',
      '--like',
      'box-own',
      '--differs',
      'mass 10 kg',
    );
    expect(told).toMatch(/lead-inside true/);
    const { told: other } = await folder.run(
      ...['new', 'part', 'box-last', '--like', 'box-own', '--differs', 'lead-inside no'],
    );
    expect(other).not.toMatch(/lead-inside/);
  });

  test('has controls of its own, and what its maker printed at its outputs', async () => {
    folder.write(
      'content/parts/six-line.yaml',
      `rackleaf: 1
parts:
  source-six-line:
    kind: source-unit
    title: "Source unit"
    terminals:
      B+, GND: { role: supply, joint: plug }
      REM-OUT: { role: turn-on-out, joint: plug }
      OUT1..6: { role: signal-out, joint: phono, signal: 4 V }
    supply: { type: constant-current, fuse: 15 A, draw: 4 A }
`,
    );
    const line = ['new', 'part', 'radio-like', '--like', 'source-six-line'];
    const marks = 'FRONT L|FRONT R|REAR L|REAR R|SUB L|SUB R';
    const { status } = await folder.run(
      ...[...line, '--differs', `OUT1..6.mark ${marks}, REM-OUT.joint supplied-lead`],
      ...['--control', 'SUB-LEVEL, level, face, , OUT5..6'],
      ...['--control', 'TONE, other, face, , , menu, , flat, gains are set through it'],
    );
    expect(status).toBe(0);
    const part = readCatalogue(contentFiles(await realEffects(folder.root).readContent())).parts.parts[
      'radio-like'
    ];
    if (part?.kind !== 'source-unit') throw new Error('No source unit.');
    expect(['OUT1', 'OUT4', 'OUT6'].map((name) => part.terminals[name]?.mark)).toEqual([
      'FRONT L',
      'REAR R',
      'SUB R',
    ]);
    expect(part.terminals['REM-OUT']?.joint).toBe('supplied-lead');
    expect(part.controls['SUB-LEVEL']).toMatchObject({ what: 'level', channels: ['OUT5', 'OUT6'] });
    expect(part.controls.TONE).toMatchObject({ form: 'menu', safe: 'flat' });
    // What it is like has controls, which stay but for the one that is told anew.
    const again = ['new', 'part', 'radio-again', '--like', 'radio-like', '--differs', 'fuse 10 A'];
    await folder.run(...again, '--control', 'SUB-LEVEL, level, top, , OUT5..6');
    const text = folder.read('content/parts/radio-again.yaml');
    expect(text).toMatch(/TONE: \{.*menu/);
    expect(text.match(/SUB-LEVEL: \{ what: level, panel: top/g)).toHaveLength(1);
    const bare = await folder.run(...line.with(2, 'radio-bare'), '--differs', 'REM-OUT none, fuse 10 A');
    expect(bare.status).toBe(0);
    const without = folder.read('content/parts/radio-bare.yaml');
    expect(without).toContain('but for REM-OUT (it has none), fuse');
    expect(
      without
        .split('\n')
        .filter((one) => !one.startsWith('#'))
        .join('\n'),
    ).not.toContain('REM-OUT');
    const unsaid = await folder.run(...line.with(2, 'radio-odd'), '--differs', 'REM-OUT');
    expect(unsaid.told).toContain('has no value of REM-OUT');
    await folder.run(...line.with(2, 'radio-few'), '--differs', 'OUT1..6.mark FRONT L|FRONT R');
    expect(folder.read('content/parts/radio-few.yaml')).toContain(
      'mark has 2 values, and OUT1..6 stands for 6 names',
    );
    const none = await folder.run(
      'new',
      'part',
      'cell',
      '--like',
      'battery-a',
      '--control',
      'A, level, face',
    );
    expect(none.told).toContain('a battery has none');
  });

  test('takes its title among what differs', async () => {
    const differs = 'title Large battery, capacity 74 Ah';
    const { status } = await folder.run(
      'new',
      'part',
      'large',
      '--like',
      'own-battery',
      '--differs',
      differs,
    );
    expect([status, folder.read('content/parts/large.yaml')]).toEqual([
      0,
      expect.stringMatching(/title: "?Large battery"?\n/),
    ]);
  });

  test.each([
    ['own-batery', 'capacity 74 Ah', 'there is no part "own-batery"; did you mean "own-battery"?'],
    [
      'own-battery',
      'capacty 74 Ah',
      '"capacty 74 Ah" names nothing that the part has; did you mean "capacity"?',
    ],
    ['own-battery', 'title', 'has no value of title: write it behind the name'],
    ['own-battery', 'capacity', 'has no value of capacity: write it behind the name, such as capacity 60 Ah'],
  ])('like %s with "%s" is refused: %s', async (like, differs, says) => {
    const line = ['new', 'part', 'battery-x', '--like', like, '--title', 'Battery', '--differs', differs];
    const { status, told } = await folder.run(...line);
    expect(status).toBe(2);
    expect(told).toContain(says);
  });

  test('takes what a maker measured where it is told of the part itself', async () => {
    const line = ['new', 'part', 'battery-75', '--like', 'own-battery', '--title', 'Battery, 75 Ah'];
    const { status, told } = await folder.run(...line, '--differs', 'short circuit 1900 A');
    expect([status, told]).toEqual([0, expect.not.stringContaining('not taken over')]);
    expect(folder.read('content/parts/battery-75.yaml')).toContain('short-circuit: 1900 A');
  });

  test('says beside its flags that a part like another is told by what differs', async () => {
    for (const line of [[], ['--kind', 'amplifier']]) {
      const { out } = await folder.run('new', 'part', ...line, '--flags');
      expect(out).toMatch(/^--like PART {2}.*like it in most rows.*--differs/m);
    }
  });

  test('lists what may differ, with what the other part has', async () => {
    const { status, out } = await folder.run('new', 'part', '--like', 'own-battery', '--flags');
    expect(status).toBe(0);
    expect(out).toMatch(/^--title {2}/);
    expect(out).toMatch(/\n--differs {2}.*own-battery[\s\S]*As it is there: .*capacity 60 Ah/);
    expect(out).toContain('Taken over only where you tell it: short-circuit');
    const strange = await folder.run('new', 'part', '--like', 'own-batery', '--flags');
    expect([strange.status, strange.told]).toEqual([
      2,
      expect.stringContaining('did you mean "own-battery"?'),
    ]);
  });

  test.each([
    ['up to 12 AWG', '24 AWG to 12 AWG'],
    ['14 AWG alone', '14 AWG to 14 AWG'],
    ['16 AWG to 12 AWG', '16 AWG to 12 AWG'],
  ])('takes %s as --flags says that a terminal takes it', async (told, written) => {
    const id = `posts-${told.replaceAll(' ', '-').toLowerCase()}`;
    folder.write(
      'content/parts/with-posts.yaml',
      'rackleaf: 1\nparts:\n  with-posts: { kind: enclosure, title: Box, size: { width: 14 in, depth: 12 in, height: 13 in }, mass: 7 kg, volume: 20 L, loading: sealed, terminals: { CUP: { role: coil, joint: binding-post, takes: 16 AWG to 10 AWG, strip: 12 mm } } }\n',
    );
    const { status, told: said } = await folder.run(
      'new',
      'part',
      id,
      '--like',
      'with-posts',
      '--differs',
      `takes ${told}`,
    );
    expect([status, said]).toEqual([0, expect.anything()]);
    expect(folder.read(`content/parts/${id}.yaml`)).toContain(`takes: ${written}`);
  });

  test('asks for every kind of part', () => {
    expect(Object.keys(leaflets).sort()).toEqual(Object.keys(kinds).sort());
  });
});
