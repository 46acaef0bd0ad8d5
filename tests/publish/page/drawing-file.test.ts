import { expect, it } from 'vitest';
import { drawingFile } from '../../../lib/publish/page/drawing-file.ts';
import { plainNames } from '../../../lib/publish/site/assets/asset-names.ts';

const svg = '<svg xmlns="http://www.w3.org/2000/svg"><title>A board</title></svg>';

it('is called by its id and its text, so that another drawing is never shown in its place', () => {
  const one = drawingFile({ id: 'cut-board', svg }, '../../', plainNames);
  const other = drawingFile(
    { id: 'cut-board', svg: svg.replace('A board', 'Another') },
    '../../',
    plainNames,
  );
  expect(one.path).toMatch(/^drawings\/cut-board\.[0-9a-f]{8}\.svg$/);
  expect(other.path).not.toBe(one.path);
  expect(drawingFile({ id: 'cut-board', svg }, '../../', plainNames)).toEqual(one);
});

it('finds style and script from the folder of drawings', () => {
  const { text } = drawingFile({ id: 'cut-board', svg }, '../../', plainNames);
  expect(text).toContain('href="../../../assets/drawing.css"');
  expect(text).toContain('src="../../../assets/drawing.js"');
  expect(text.trimEnd().endsWith('</script></svg>')).toBe(true);
});

it('throws on what can be no file', () => {
  expect(() => drawingFile({ id: '../out', svg }, '../../', plainNames)).toThrow('can be no file');
  expect(() => drawingFile({ id: 'cut-board', svg: 'no drawing' }, '../../', plainNames)).toThrow(
    'can be no file',
  );
});
