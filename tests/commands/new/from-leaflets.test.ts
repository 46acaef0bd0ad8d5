import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { EmptyFolder } from '../shop-folder.ts';
import { leafletLines, leafletTry } from './leaflet-try.ts';
import { Typed } from './typed.ts';

const folder = new EmptyFolder();
afterAll(() => folder.remove());

/** Lines of commands, answers and files, each Enter counted. */
let typed = 0;
const job = 'content/jobs/hatchback-five.yaml';

describe('from leaflets alone, with a head unit behind an interface', () => {
  beforeAll(async () => {
    for (const { line, answers } of leafletTry) {
      const person = new Typed(...answers);
      const { out } = await folder.answered(person, ...line);
      expect([line, person.refused, person.count]).toEqual([line, [], answers.length]);
      expect(out).toMatch(/^content\//);
      typed += 1 + person.count;
    }
  });

  test('the job says at its place what it lacks', () => {
    expect(folder.read(job)).toMatch(
      /^ {2}# Still to be written: interface has 4 outputs left.*\n(?: {2}# .*\n)* {2}interface: \{/m,
    );
  });

  test('and reads once that is written, within 100 lines with its check and its build', async () => {
    folder.write(job, `${folder.read(job)}${leafletLines.join('\n')}\n`);
    typed += leafletLines.length;
    const { problems } = readContent(await realEffects(folder.root).readContent());
    expect(problems).toEqual([]);
    expect(typed + 2).toBeLessThanOrEqual(100);
  });

  test('the vehicle says once what is still to be measured, things alike in one line', () => {
    const text = folder.read('content/vehicles/hatchback.yaml');
    const told = text.split('\n').filter((line) => line.startsWith('#   '));
    expect(new Set(told).size).toBe(told.length);
    expect(told).toContain('#   meter: clean voltage of SP1..4; until then it follows from 18 W at 4 ohm');
    for (const words of ['left-front-door', 'clean voltage'])
      expect(told.filter((line) => line.includes(words))).toHaveLength(1);
  });

  test("the vehicle's own grommet and its ambients are in its file", () => {
    const text = folder.read('content/vehicles/hatchback.yaml');
    expect(text).toContain('{ zone: bulkhead, length: 6 in, through-hole: 3/4 in, own-grommet: true }');
    expect(text).toContain('SP1..4: { powers: { 4 ohm: 18 W } }');
    expect(folder.read('content/parts/head-unit.yaml')).toContain('SP1..4: { powers: { 4 ohm: 18 W } }');
    expect(text).toContain('ambient: { engine-bay: 85 C, cabin: 45 C }');
  });
});
