import { describe, expect, test } from 'vitest';
import type { WrittenValue } from '../../../lib/model/content/proposal.ts';
import { keepEdits } from '../../../lib/plan/keeping/keep-edits.ts';
import { type KeptKind, type KeptValue, keptValues } from '../../../lib/plan/keeping/kept-values.ts';
import { splice } from '../../../lib/read/yaml/splice.ts';
import { readYaml } from '../../../lib/read/yaml/yaml.ts';
import { samplePlan } from '../../publish/sample/sample-plan.ts';
import { inJob, jobFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { oneBoard } from '../board/one-board.ts';

const sample = samplePlan();
const bare = { ...sample, wires: [], boards: [], controls: [], proposals: [] };

describe('what a plan came to that its job leaves out', () => {
  const [control] = sample.controls;
  const [sampleBoard] = sample.boards;
  const [placement] = sampleBoard?.placements ?? [];
  if (!control || !sampleBoard || !placement) throw new Error('The sample plan has them.');
  const kept = (plan: Partial<typeof sample>, ...changes: readonly Change[]) =>
    keptValues(oneBoard(undefined, ...changes).job, { ...bare, ...plan }).map(({ kind, path, value }) => [
      kind,
      path.join('.'),
      value,
    ]);

  test('is what rules proposed, by where it would stand', () => {
    const proposal = (path: readonly string[], value: WrittenValue) => {
      const about = { rule: 'supply' as const, reason: 'near' };
      return { id: path.join('.'), ...about, path: [...path], says: JSON.stringify(value) };
    };
    const proposals = [
      proposal(['links', 'feed'], { from: 'a.B', to: 'b.C' }),
      proposal(['devices', 'amp', 'filters'], {}),
      proposal(['devices', 'amp'], { part: 'amp-a' }),
      proposal(['boards', 'main', 'fixings'], {}),
    ];
    expect(kept({ proposals }).map(([kind, path]) => `${String(kind)} ${String(path)}`)).toEqual([
      'links links.feed',
      'settings devices.amp.filters',
      'links devices.amp',
      'places boards.main.fixings',
    ]);
  });

  test('is each place that was found, as the tape tells it, turn and height where there is one, and the sheet', () => {
    const board = {
      ...sampleBoard,
      ...{
        id: 'main',
        sheetChosen: 'computed' as const,
        sheet: 'ply-12',
        datumInSpace: { xM: 0.254, yM: 0 },
      },
      placements: [
        {
          ...placement,
          ...{ item: 'amp', xM: 0.0508, yM: 0.0254, turnDeg: 0, raisedM: 0, chosen: 'computed' as const },
        },
        {
          ...placement,
          ...{ item: 'dsp', xM: 0, yM: 0, turnDeg: 90, raisedM: 0.0254, chosen: 'computed' as const },
        },
        { ...placement, ...{ item: 'bar', chosen: 'given' as const } },
      ],
    };
    expect(kept({ boards: [board] })).toEqual([
      ['places', 'boards.main.sheet', 'ply-12'],
      ['places', 'devices.amp.at', { x: '2 in', y: '1 in' }],
      ['places', 'devices.dsp.at', { x: '0 in', y: '0 in' }],
      ['places', 'devices.dsp.turn', 90],
      ['places', 'devices.dsp.raised', '1 in'],
    ]);
    const noPlace = inJob('at: { x: 10 mm, y: 10 mm }\n    ', '');
    expect(kept({ boards: [{ ...board, sheetChosen: 'given', placements: [] }] }, noPlace)).toEqual([
      ['places', 'boards.main.at', { x: '10 in', y: '0 in' }],
    ]);
  });

  test('is the preset of each control that the job does not give', () => {
    const controls = [
      { ...control, item: 'amp', control: 'GAIN', preset: 'fully down', chosen: 'computed' as const },
      { ...control, item: 'amp', control: 'LOW', preset: '80 Hz', chosen: 'given' as const },
    ];
    expect(kept({ controls })).toEqual([['settings', 'devices.amp.settings.GAIN', 'fully down']]);
  });

  test('is a label for each link, its sign left off; none where its conductors do not share one', () => {
    const [wire] = sample.wires;
    if (!wire) throw new Error('The sample plan has a wire.');
    const pair = (a: string, b: string) => [
      { ...wire, id: 'speaker.+', link: 'speaker', label: a, sign: '+' as const },
      { ...wire, id: 'speaker.-', link: 'speaker', label: b, sign: '-' as const },
    ];
    expect(kept({ wires: pair('L1+', 'L1-') })).toEqual([['labels', 'links.speaker.label', 'L1']]);
    expect(kept({ wires: pair('L1+', 'L2-') })).toEqual([]);
  });
});

describe('what is written into the job file', () => {
  const [item] = sample.items;
  if (!item) throw new Error('The sample plan has an item.');
  const written = (
    kinds: readonly KeptKind[],
    values: readonly KeptValue[],
    ...changes: readonly Change[]
  ) => {
    const text = smallShop(...changes).find(({ path }) => path === jobFile)?.text ?? '';
    const doc = readYaml(jobFile, text).value;
    if (!doc) throw new Error('The job can be read.');
    const items = ['main-fuse', 'amp', 'sub'].map((id) => ({ ...item, id, title: `Title of ${id}` }));
    const { edits, ...rest } = keepEdits(doc, values, kinds, { items });
    const paths = (of: readonly KeptValue[]) => of.map(({ path }) => path.join('.'));
    const after = splice(text, edits);
    if (typeof after !== 'string') throw new Error('It can be written.');
    return {
      ...{ kept: paths(rest.kept), waiting: paths(rest.waiting), alongside: paths(rest.alongside) },
      added: after.split('\n').filter((line) => !text.split('\n').includes(line)),
    };
  };
  const place: KeptValue = { kind: 'places', path: ['devices', 'sub', 'turn'], value: 90 };
  const label: KeptValue = { kind: 'labels', path: ['links', 'feed', 'label'], value: 'P7' };
  const filters: KeptValue = {
    kind: 'settings',
    path: ['devices', 'sub', 'reversed'],
    value: 'it faces back',
  };
  const knob: KeptValue = { kind: 'settings', path: ['devices', 'amp', 'settings', 'LOW'], value: '80 Hz' };

  test('is what was asked for, and nothing of another kind', () => {
    const found = written(['places'], [place, label, filters]);
    expect(found).toMatchObject({ kept: ['devices.sub.turn'], waiting: [], alongside: [] });
    expect(found.added.join()).toContain('turn: 90');
    expect(found.added.join()).not.toContain('P7');
  });

  test('leaves what the file says already', () => {
    const given = inJob('to: amp.B+ }', 'to: amp.B+, label: P3 }');
    expect(written(['labels'], [label], given)).toMatchObject({ kept: [], added: [] });
  });

  test('waits for the device or link that it is of, unless that is kept too', () => {
    const ofNew: KeptValue = { kind: 'labels', path: ['links', 'more', 'label'], value: 'P9' };
    const more: KeptValue = {
      kind: 'links',
      path: ['links', 'more'],
      value: { from: 'amp.B+', to: 'sub.C1' },
    };
    expect(written(['labels'], [more, ofNew])).toMatchObject({ kept: [], waiting: ['links.more.label'] });
    expect(written(['labels', 'links'], [more, ofNew])).toMatchObject({
      ...{ kept: ['links.more', 'links.more.label'], waiting: [] },
    });
  });

  test('once its links are written has all else that rules proposed of its wiring, and titles, each once', () => {
    const found = written(['links'], [place, filters, knob]);
    expect(found).toMatchObject({
      kept: [],
      // The amplifier has a title; a preset is no wiring; a place was not asked for.
      alongside: ['devices.sub.reversed', 'devices.main-fuse.title', 'devices.sub.title'],
    });
    expect(found.added.join()).toContain('Title of sub');
    expect(found.added.join()).not.toContain('Title of amp');
    const both = written(['links', 'settings'], [filters]);
    expect(both).toMatchObject({ kept: ['devices.sub.reversed'] });
    expect(both.alongside).toEqual(['devices.main-fuse.title', 'devices.sub.title']);
  });
});
