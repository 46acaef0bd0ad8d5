import { format, inspect } from 'node:util';
import { describe, expect, test } from 'vitest';
import { Private } from '../../lib/model/private.ts';

const plate = 'XY 987 Z';
const held = new Private(plate);

describe('a private value', () => {
  test('is given where it is asked for', () => {
    expect(held.reveal()).toBe(plate);
  });

  test.each([
    ['a template', () => `plate ${held}`],
    ['String()', () => String(held)],
    ['concatenation', () => 'plate '.concat(held.toString())],
    ['a joined list', () => [held].join()],
    ['a comparison with text', () => Reflect.has({}, [held, plate].sort().join())],
    ['a name of an object', () => Object.fromEntries([[held, 1]])],
    ['toLocaleString', () => held.toLocaleString()],
    ['a URL', () => new URL(`https://sheets.example/${held}`)],
    ['an error message', () => new Error(`no ${held}`)],
    ['escape', () => encodeURIComponent(String(held))],
  ])('can not be put into a string by %s', (_, attempt) => {
    expect(attempt).toThrow(/^A private value was put into a string/);
  });

  test.each([
    ['alone', () => JSON.stringify(held)],
    ['deep within', () => JSON.stringify({ customer: [{ plate: held }] })],
  ])('can not be put into JSON, %s', (_, attempt) => {
    expect(attempt).toThrow(/^A private value was put into JSON/);
  });

  test('is not seen by what looks at an object from outside', () => {
    const seen = [
      inspect(held, { showHidden: true, depth: 9 }),
      format('%o %O %j', held, held, Object.keys(held)),
      JSON.stringify(structuredClone(Object.entries(held))),
      JSON.stringify({ ...held }),
      Reflect.ownKeys(held).join(),
      Reflect.ownKeys(Private.prototype).map(String).join(),
    ].join('\n');
    expect(seen).not.toContain(plate);
    expect(structuredClone(Object.assign({}, held))).toEqual({});
  });

  test('what it says when it is misused does not tell it', () => {
    for (const attempt of [() => `${held}`, () => JSON.stringify(held)]) {
      try {
        attempt();
        expect.unreachable();
      } catch (error) {
        expect(inspect(error)).not.toContain(plate);
      }
    }
  });
});
