import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { orderOfWork } from '../../../lib/plan/work/steps/order-of-work.ts';
import type { Work } from '../../../lib/plan/work/work.ts';
import { benchTest } from '../../../lib/publish/sheets/bench-test.ts';
import { boardWiring } from '../../../lib/publish/sheets/board/board-wiring.ts';
import { faultSteps } from '../../../lib/publish/words/vehicle-card-words.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';
import { demoJobs, demoPlan } from '../demo.ts';
import { smallPlan } from '../plan-small-shop.ts';
import { randomWork } from './random-work.ts';

type Parts = Pick<BuildPlan, 'items' | 'wires' | 'boards' | 'power' | 'audio' | 'runs'>;

const adds = ({ items }: Parts, kind: string): boolean =>
  items.some((item) => item.kind === kind && item.origin === 'job');

/** Words of a part or a direction that a job may lack, and where it does not. */
const words: readonly (readonly [RegExp, (plan: Parts) => boolean])[] = [
  [/\bprocessors?\b/i, (plan) => adds(plan, 'processor')],
  [/\bamplifiers?\b/i, (plan) => adds(plan, 'amplifier') || plan.audio.channels.length > 0],
  [/ground bar/i, ({ items }) => items.some(({ title }) => /ground bar/i.test(title))],
  [/\brelays?\b/i, (plan) => adds(plan, 'relay')],
  [/\bgrommets?\b/i, ({ runs }) => runs.some(({ grommets }) => grommets.length > 0)],
  [/main fuse/i, ({ power }) => power.fuses.length > 0],
  [/bridge piece/i, ({ boards }) => boards.some(({ crossings }) => crossings > 0)],
  [/level control/i, (plan) => adds(plan, 'level-control')],
  [/\btweeter/i, ({ items }) => items.some(({ kind }) => kind === 'speaker')],
  ...['FRONT', 'REAR', 'LEFT', 'RIGHT', 'UP', 'DOWN'].map(
    (way) =>
      [
        new RegExp(`\\b${way}\\b`),
        ({ boards }: Parts) =>
          boards.some(({ right, upward }) => [right, upward].some((one) => one.toUpperCase() === way)),
      ] as const,
  ),
];

/** What is said of parts that the job does not have. Names of the job's own things are left out. */
function strayWords(plan: Parts, texts: readonly string[], named: Parts = plan): string[] {
  const names = [
    ...named.items.flatMap(({ id, title, controls }) => [id, title, ...controls.map(({ name }) => name)]),
    ...named.boards.map(({ id }) => id),
    ...named.wires.map(({ id }) => id),
  ];
  // A name in one word is the word itself: it is left where it stands.
  const own = names.filter((name) => /[-. ]/.test(name)).toSorted((a, b) => b.length - a.length);
  return texts
    .filter((text) => text.includes(' '))
    .map((text) => own.reduce((left, name) => left.replaceAll(name, ''), text))
    .flatMap((text) => words.filter(([word, has]) => word.test(text) && !has(plan)).map(() => text));
}

const stepTexts = (steps: BuildPlan['steps']): string[] => steps.flatMap(({ text, proof }) => [text, proof]);

/** Every text of a model. */
function textsOf(model: unknown): string[] {
  if (typeof model === 'string') return [model];
  return typeof model === 'object' && model !== null ? Object.values(model).flatMap(textsOf) : [];
}

function sheetTexts(plan: BuildPlan): string[] {
  return [...textsOf(benchTest.model(plan)), ...textsOf(boardWiring.model(plan)), ...faultSteps(plan)];
}

/** A plan without what is named. */
function without(plan: BuildPlan, kinds: readonly string[]): BuildPlan {
  const gone = plan.items.filter(({ kind }) => kinds.includes(kind)).map(({ id }) => id);
  const isGone = (terminal: string) => gone.includes(terminal.split('.')[0] ?? '');
  return {
    ...plan,
    items: plan.items.filter(({ id }) => !gone.includes(id)),
    wires: plan.wires.filter(({ from, to }) => !isGone(from) && !isGone(to)),
    controls: plan.controls.filter(({ item }) => !gone.includes(item)),
  };
}

describe('the texts of a job name parts and directions of their own job', () => {
  it('in the steps of any order of work', () => {
    fc.assert(
      fc.property(randomWork, (work) => {
        expect(strayWords(work.plan, stepTexts(orderOfWork(work).steps))).toEqual([]);
      }),
    );
  });

  it.each(demoJobs)('in steps and sheets of the demo job %s', (id) => {
    const plan = demoPlan(id);
    expect(strayWords(plan, [...stepTexts(plan.steps), ...sheetTexts(plan)])).toEqual([]);
  });

  it.each([[['processor']], [['distribution']], [['relay']], [['level-control', 'processor']]])(
    'in the sheets once a job has no %s',
    (kinds) => {
      const whole = fixedPlan('van-three-amps');
      const plan = without(whole, kinds);
      expect(strayWords(plan, sheetTexts(plan), whole)).toEqual([]);
    },
  );

  it('and a text that does not is found', () => {
    const { plan } = smallPlan();
    expect(strayWords(plan, ['Connect the ground bar', 'FRONT is marked'])).toEqual([
      'Connect the ground bar',
      'FRONT is marked',
    ]);
  });
});

describe('a step', () => {
  const [work] = fc.sample(randomWork, { numRuns: 60, seed: 3 }).filter(({ plan }) => plan.boards.length > 0);
  if (!work) throw new Error('some plan has a board');
  const proofOf = (own: Work, id: string): string =>
    orderOfWork(own).steps.find((step) => step.id === id)?.proof ?? '';

  it('marks the directions of its own board', () => {
    const [board] = work.plan.boards;
    if (!board) throw new Error('it has a board');
    const turned = { ...board, right: 'rear', upward: 'left' } as const;
    const own = { ...work, plan: { ...work.plan, boards: [turned] } };
    expect(proofOf(own, `cut-${board.id}`)).toContain('REAR and LEFT are marked');
    expect(proofOf(own, `cut-${board.id}`)).not.toMatch(/FRONT|UP/);
  });

  it('measures to the step of the shop\u2019s own tape', () => {
    const id = `cut-${work.plan.boards[0]?.id}`;
    expect(proofOf({ ...work, tape: { system: 'inch', fraction: 32 } }, id)).toContain('to 1/32 in');
    expect(proofOf({ ...work, tape: { system: 'inch', fraction: 16 } }, id)).toContain('to 1/16 in');
    expect(proofOf({ ...work, tape: { system: 'mm', fraction: 16 } }, id)).toContain('to 1 mm');
  });

  it('ties as close as the house rule says, rounded down', () => {
    const id = `dress-${work.plan.boards[0]?.id}`;
    expect(proofOf({ ...work, tiesM: { board: 0.1524, vehicle: 0.3048 } }, id)).toContain('A tie every 6 in');
    expect(proofOf({ ...work, tiesM: { board: 0.12, vehicle: 0.3048 } }, id)).toContain(
      'A tie every 4 11/16 in',
    );
  });
});

it('a house rule of the shop is said in the steps that it rules', () => {
  const { plan } = smallPlan([
    'content/shop.yaml',
    '# House rules keep their defaults.',
    'rules: { tie-spacing-vehicle: 8 in }',
  ]);
  const runs = plan.steps.filter(({ id }) => id.startsWith('run-'));
  expect(runs.length).toBeGreaterThan(0);
  for (const { proof } of runs) expect(proof).toContain('a tie every 8 in');
});
