import { afterAll, describe, expect, test } from 'vitest';
import { differenceFault } from '../../../lib/commands/new/part/like/differences.ts';
import { likeText } from '../../../lib/commands/new/part/like/part-like.ts';
import { partText } from '../../../lib/commands/new/part/part-text.ts';
import { ShopFolder } from '../shop-folder.ts';
import { leafletFlags, leaflets } from './leaflets.ts';

const folder = new ShopFolder();
afterAll(() => folder.remove());

/** The title in a file, in quotes where it has a comma. */
function titleIn(text: string): string | undefined {
  const [, quoted, plain] = /\btitle: (?:"([^"]*)"|([^,\n}]*))/.exec(text) ?? [];
  return quoted ?? plain;
}

describe('a part of which nobody tells a title', () => {
  test.each([
    ['4 x 65 W at 4 ohm', ['1..4, CH1..4, IN1..4, 2 ohm, 65 W at 4 ohm, 95 W at 2 ohm']],
    ['230 W at 4 ohm', ['1, SPK, IN-L IN-R, 2 ohm, 230 W at 4 ohm']],
    [
      '4 x 75 W at 4 ohm + 300 W at 2 ohm',
      ['1..4, CH1..4, IN1..4, 2 ohm, 75 W at 4 ohm', '5, CH5, IN5, 2 ohm, 300 W at 2 ohm'],
    ],
  ])('is called by what its channels give: %s', (powers, channel) => {
    expect(titleIn(partText('amplifier', 'own', { channel }))).toBe(`Amplifier, ${powers}`);
  });

  test.each([
    [
      'speaker',
      'Subwoofer, 262 mm, 400 W, 2 ohm',
      'subwoofer, 400 W, , 236 mm, C1, 2 ohm, 1.7 ohm, binding-post',
    ],
    ['speaker', 'Coaxial speaker, 262 mm, 60 W, 4 ohm', 'coaxial, 60 W, 60 Hz, , C1, 4 ohm, , blade-tab'],
    ['enclosure', 'Sealed enclosure, 20 L', '20 L, sealed, , 236 mm, ?'],
    ['battery', 'Flooded battery, 64 Ah, 620 A', 'flooded, 64 Ah, 620 A, , '],
    ['fuse', 'Small bolt in fuse, 80 A', 'small-bolt-in, 80 A, 32 V, 2 kA'],
    ['terminal', 'Ring lug, M8', 'ring-lug, M8, , , '],
  ] as const)('%s: %s', (kind, title, facts) => {
    const text = partText(kind, 'own', { case: ['262 mm, 262 mm, 125 mm, 5 kg'], facts: [facts] });
    expect(titleIn(text)).toBe(title);
  });

  test('keeps the one that is told', () => {
    const told = { title: ['Bass amplifier'], channel: ['1, SPK, IN, 2 ohm, 230 W at 4 ohm'] };
    expect(titleIn(partText('amplifier', 'own', told))).toBe('Bass amplifier');
  });

  test.each(Object.entries(leaflets))('of the kind %s still reads', async (kind, leaflet) => {
    const name = `untitled-${kind}`;
    const { status } = await folder.run('new', 'part', name, '--kind', kind, ...leafletFlags(leaflet));
    expect(status).toBe(0);
    expect(folder.read(`content/parts/${name}.yaml`)).toMatch(/\btitle: "?[A-Z]/);
  });

  const battery = {
    kind: 'battery',
    title: 'Flooded battery, 60 Ah, 540 A',
    capacity: '60 Ah',
    'cold-cranking': '540 A',
  };
  test.each([
    ['capacity 66 Ah', 'Flooded battery, 66 Ah, 540 A'],
    ['capacity 66 Ah, cold-cranking 600 A', 'Flooded battery, 66 Ah, 600 A'],
    ['', 'Flooded battery, 60 Ah, 540 A'],
  ])('names its figures in place of those of the part that it is like: %s', (differs, title) => {
    expect(titleIn(likeText({ id: 'own', title: '', like: 'other' }, battery, differs))).toBe(title);
  });

  test.each([
    ['title Large battery, capacity 74 Ah', 'Large battery'],
    ['capacity 74 Ah, title: Battery, 12 V, 74 Ah', 'Battery, 12 V, 74 Ah'],
    ['title "Battery, large, 74 Ah", capacity 74 Ah', 'Battery, large, 74 Ah'],
  ])('is what the differences call the part: %s', (differs, title) => {
    expect(differenceFault(battery, differs)).toBeNull();
    const text = likeText({ id: 'own', title: '', like: 'other' }, battery, differs);
    expect([titleIn(text), text.includes('74 Ah')]).toEqual([title, true]);
    expect(text).toContain('capacity: 74 Ah');
    // What is told by itself goes before it.
    expect(titleIn(likeText({ id: 'own', title: 'Told', like: 'other' }, battery, differs))).toBe('Told');
  });

  test('tells what the other part is silent of, where its kind has it', () => {
    const amplifier = { kind: 'amplifier', title: 'A', supply: { type: 'regulated', fuse: '30 A' } };
    const differs = 'cut-out 10.2 V, mass 3 kg';
    expect(differenceFault(amplifier, differs)).toBeNull();
    const text = likeText({ id: 'own', title: '', like: 'other' }, amplifier, differs);
    expect(text).toMatch(/supply:[^}]*fuse: 30 A[^}]*cut-out: 10.2 V/);
    expect(text).toMatch(/\n {4}mass: 3 kg/);
    expect(differenceFault(battery, 'cut-out 10.2 V')).toContain('names nothing that the part has');
  });

  test('does not swallow a difference that is misspelt behind it', () => {
    expect(differenceFault(battery, 'title Large, capacty 74 Ah')).toContain('did you mean "capacity"?');
  });

  const unit = {
    ...{ kind: 'source-unit', title: 'Unit' },
    terminals: { 'REM-OUT': { role: 'turn-on-out', current: '300 mA' }, SP1: { role: 'speaker-out' } },
  };

  test('takes a value by a longer end of its way than it needs', () => {
    for (const name of ['current', 'REM-OUT.current', 'terminals.REM-OUT.current']) {
      expect(differenceFault(unit, `${name} 250 mA`)).toBeNull();
      const text = likeText({ id: 'own', title: 'Told', like: 'other' }, unit, `${name} 250 mA`);
      expect(text).toMatch(/REM-OUT: \{ role: turn-on-out, current: 250 mA \}/);
    }
  });

  test('tells how a value is called, and where it stands, that is looked for elsewhere', () => {
    expect(differenceFault(unit, 'SP1.current 1 A')).toBe(
      '"SP1.current 1 A" names nothing that the part has: its current is called current, and stands at terminals.REM-OUT.current, such as current 300 mA',
    );
  });

  test('is made of its id where the title of the other part names nothing that differs', () => {
    const fan = { kind: 'fan', title: 'Fan, 80 mm', draw: '180 mA' };
    const titled = (differs: string) =>
      titleIn(likeText({ id: 'quiet-fan-b', title: '', like: 'other' }, fan, differs));
    expect(titled('draw 80 mA')).toBe('Quiet fan b');
    expect(titled('')).toBe('Fan, 80 mm');
  });
});

describe('a part that is like another one', () => {
  const speaker = {
    kind: 'speaker',
    title: 'Coaxial speaker, 6 1/2 in, 4 ohm',
    size: { width: '6 1/2 in' },
    terminals: { C1: { role: 'coil', joint: 'blade-tab', takes: '18 AWG to 12 AWG', tab: '6.3 mm' } },
  };
  const textOf = (differs: string) => likeText({ id: 'own', title: '', like: 'other' }, speaker, differs);

  test('has the widths of its own tabs, each at its terminal, and none of the other one', () => {
    const text = textOf('width 166 mm, tabs + 6.3 mm - 2.8 mm');
    expect(text).toMatch(/C1\+: \{ role: coil-positive, joint: blade-tab, .*tab: 6\.3 mm \}/);
    expect(text).toMatch(/C1-: \{ role: coil-negative, joint: blade-tab, .*tab: 2\.8 mm \}/);
    expect(textOf('tabs 2.8 mm')).toMatch(/C1: \{ role: coil, .*tab: 2\.8 mm \}/);
    const untold = textOf('width 166 mm');
    expect(untold).toMatch(/Not taken over, .*: tabs/);
    expect(untold).not.toMatch(/tab: 6\.3 mm/);
    expect(differenceFault(speaker, 'tabs + 6.3 mm')).toMatch(/is written \+ 6\.3 mm - 2\.8 mm/);
    expect(differenceFault(speaker, 'tabs + 6.3 mm - 2.8 mm')).toBeNull();
  });

  test('names in its title what it is in place of what the other one is', () => {
    const box = {
      kind: 'enclosure',
      title: 'Sealed enclosure with a cup, 28 L',
      volume: '28 L',
      loading: 'sealed',
    };
    const told = likeText({ id: 'own', title: '', like: 'other' }, box, 'volume 45 L, loading ported');
    expect(titleIn(told)).toBe('Ported enclosure with a cup, 45 L');
    // A torque stands in no title.
    const battery = { kind: 'battery', title: 'Battery, 80 Ah', terminals: { POS: { torque: '10 N m' } } };
    expect(
      titleIn(likeText({ id: 'main-battery', title: '', like: 'other' }, battery, 'torque 12 N m')),
    ).not.toMatch(/12 N m/);
  });
});
