import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { initialEntries, isAnswer } from '../../lib/calculators/calculator.ts';
import { calculators } from '../../lib/calculators/index.ts';
import { computation, isComputationId, isFormulaOf, isSourceOf } from '../../lib/model/computations/index.ts';
import { isFault } from '../../lib/model/fault.ts';
import { count, quantity, quantityAbove, wireSize } from '../../lib/model/fields.ts';
import type { Trace } from '../../lib/model/trace.ts';
import { schemaProblems } from '../../lib/read/schema/schema-problems.ts';
import { readYaml } from '../../lib/read/yaml/yaml.ts';
import '../property-seed.ts';
import { redone } from '../publish/workings/redo.ts';
import { asked, smallBench } from './bench-shops.ts';
import { writtenEntries } from './entries.ts';

/** What the reader says of a text in a file, under the name that the entry has. */
function saidOfFile(schema: z.ZodType, label: string, written: string): string | undefined {
  const { value: document } = readYaml('shop.yaml', `"${label}": ${written}\n`);
  if (!document) throw new Error('The text can not stand in a file.');
  const shape = z.strictObject({ [label]: schema });
  const read = shape.safeParse(document.data);
  return read.success ? undefined : schemaProblems(document, read.error, shape)[0]?.message;
}

const current = quantityAbove('current');

describe('an entry', () => {
  it.each([
    ['conductor', 'current', current, '60'],
    ['conductor', 'current', current, '60,5 A'],
    ['conductor', 'current', current, '2 x 30 A'],
    ['conductor', 'current', current, '60 amps'],
    ['conductor', 'current', current, '0 A'],
    ['conductor', 'current', current, '60 V'],
    ['conductor', 'length', quantityAbove('length'), '13 5 / 8 in'],
    ['conductor', 'length', quantityAbove('length'), '1/7 in'],
    ['conductor', 'length', quantityAbove('length'), '13 inches'],
    ['conductor', 'length', quantityAbove('length'), '2000 m'],
    ['conductor', 'crimps', count, '1.5'],
    ['conductor', 'crimps', count, '-1'],
    ['conductor', 'size', wireSize, '4 ga'],
    ['fraction', 'length', quantity('length'), '½ in'],
  ] as const)('of %s that can not be read is told as in a file: %s', (id, field, schema, written) => {
    const label = calculators.find((one) => one.id === id)?.fields[field]?.label ?? '';
    const said = saidOfFile(schema, label, written);
    expect(said).toBeDefined();
    expect(asked(id, { [field]: written })).toEqual({ unread: [{ field, message: said }] });
  });

  it('is read as a file is, whatever stands there', () => {
    const field = calculators.find(({ id }) => id === 'conductor')?.fields.current;
    fc.assert(
      fc.property(fc.stringMatching(/^[0-9][0-9 ./x,]{0,6} ?(A|mA|kA|V|amps|)$/), (written) => {
        const said = saidOfFile(current, field?.label ?? '', written);
        const read = field?.read(written);
        expect(read).toEqual(said === undefined ? expect.any(Number) : { unread: said });
      }),
    );
  });

  it('keeps the bounds of its house rule', () => {
    expect(asked('conductor', { voltage: '30 V' })).toMatchObject({ unread: [{ field: 'voltage' }] });
    expect(asked('conductor', { voltage: '12 V' })).toHaveProperty('says');
  });

  it('that is wrong does not hide another one', () => {
    expect(asked('conductor', { current: 'x', length: 'y' })).toMatchObject({
      unread: [{ field: 'current' }, { field: 'length' }],
    });
  });
});

describe.each(calculators.map((one) => [one.id, one] as const))('the calculator %s', (_, calculator) => {
  const begun = initialEntries(calculator, smallBench);
  const answers = () =>
    writtenEntries(calculator, begun, 80, 14)
      .map((entries) => calculator.answer(entries, smallBench))
      .filter(isAnswer);

  it('answers what it begins with', () => {
    expect(calculator.answer(begun, smallBench)).toHaveProperty('says');
  });

  it('answers, refuses or asks, and never breaks down', () => {
    const names = Object.keys(calculator.fields);
    fc.assert(
      fc.property(
        fc.array(fc.string(), { minLength: names.length, maxLength: names.length }),
        fc.nat(names.length),
        (texts, from) => {
          const entries = { ...begun };
          for (const [k, name] of names.entries()) if (k >= from) entries[name] = texts[k] ?? '';
          const answered = calculator.answer(entries, smallBench);
          expect(isAnswer(answered) || isFault(answered) || answered.unread.length > 0).toBe(true);
        },
      ),
    );
  });

  it('tells nothing that is no number', () => {
    const all = answers();
    expect(all.length).toBeGreaterThan(20);
    for (const answer of all) expect(JSON.stringify(answer)).not.toMatch(/NaN|Infinity|undefined/);
  });

  it('has workings that the catalogue of computations tells', () => {
    const untold = (trace: Trace): boolean =>
      trace.origin === 'computed' &&
      !(
        isComputationId(trace.rule) &&
        isFormulaOf(computation(trace.rule), trace.formula ?? '') &&
        isSourceOf(computation(trace.rule), trace)
      );
    const traces = answers().flatMap(({ figures, steps }) =>
      [...figures, ...steps].flatMap(({ trace }) => trace ?? []),
    );
    expect(traces.length).toBeGreaterThan(100);
    const found = traces
      .filter(untold)
      .map(({ rule, formula, citation, mark }) => `${rule}: ${formula}; ${citation}; ${mark}`);
    expect([...new Set(found)]).toEqual([]);
  });
});

describe('the working of a calculator', () => {
  const plain = [
    'way-resistance',
    'conductor-drop',
    'length-in-inches',
    'length-in-millimetres',
    'filters-in-a-row',
  ];

  it('can be redone by hand', () => {
    let redoneOnes = 0;
    for (const calculator of calculators)
      for (const entries of writtenEntries(calculator, initialEntries(calculator, smallBench), 60, 15)) {
        const answer = calculator.answer(entries, smallBench);
        if (!isAnswer(answer)) continue;
        for (const { trace } of [...answer.figures, ...answer.steps])
          if (trace && plain.includes(trace.rule) && Number(trace.value) > -200) {
            expect(redone(trace)).toBeCloseTo(Number(trace.value), 8);
            redoneOnes += 1;
          }
      }
    expect(redoneOnes).toBeGreaterThan(100);
  });

  it('of a drop and of a reserve never errs to the unsafe side', () => {
    const calculator = calculators.find(({ id }) => id === 'conductor');
    if (!calculator) throw new Error('There is no such calculator.');
    for (const entries of writtenEntries(calculator, initialEntries(calculator, smallBench), 200, 16)) {
      const answer = calculator.answer(entries, smallBench);
      if (!isAnswer(answer)) continue;
      const drop = answer.figures.find(({ label }) => label === 'Drop');
      const carries = answer.figures.find(({ label }) => label === 'It carries');
      if (!drop || !carries) continue;
      expect(Number.parseFloat(drop.text)).toBeGreaterThanOrEqual(Number(drop.trace?.value) - 1e-6);
      expect(Number.parseFloat(carries.text)).toBeLessThanOrEqual(Number(carries.trace?.value));
    }
  });
});
