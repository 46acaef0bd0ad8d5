import { describe, expect, test } from 'vitest';
import { drawingToken, fillDrawings } from '../../../lib/publish/page/drawing-token.ts';

const html = `<p>${drawingToken('cover')}</p><p>${drawingToken('placement')}</p><p>${drawingToken('labels')}</p>`;
const drawing = (sheet: string, openTo?: 'builders' | 'everyone') => ({
  id: `of-${sheet}`,
  sheet,
  title: '',
  svg: '',
  ...(openTo && { openTo }),
});
const filled = (...drawings: ReturnType<typeof drawing>[]) =>
  fillDrawings(html, drawings, (own) => own.map(({ id }) => id).join(' '));

describe('drawings on the sheets of a page', () => {
  test('stand where their sheet has its token; a sheet without any keeps nothing', () => {
    expect(filled(drawing('cover', 'everyone'), drawing('placement'))).toBe(
      '<p>of-cover</p><p>of-placement</p><p></p>',
    );
  });

  test('are never those of builders on a sheet that the customer sees as well', () => {
    expect(() => filled(drawing('cover'))).toThrow('builders alone');
    expect(() => filled(drawing('cover', 'builders'))).toThrow('builders alone');
    expect(filled(drawing('placement', 'everyone'))).toContain('of-placement');
  });

  test('are never lost on a sheet that does not exist', () => {
    expect(() => filled(drawing('elsewhere', 'everyone'))).toThrow('does not exist');
  });
});
