import { describe, expect, it } from 'vitest';
import { cardLabels, cardStyle } from '../../../lib/publish/page/card-labels.ts';

describe('titles of columns for cards', () => {
  it('stand one a column, with a colon unless they end with a sign of their own', () => {
    expect(cardLabels([{ title: 'No.' }, { title: 'Rating' }, { title: 'Good enough?' }])).toBe(
      '--c1:"No. ";--c2:"Rating: ";--c3:"Good enough? "',
    );
  });

  it('keep the number of their column where one has no title', () => {
    expect(cardLabels([{ title: '' }, { title: 'Rating' }])).toBe('--c2:"Rating: "');
  });

  it('can not end their string, their property or an element that they stand in', () => {
    const [label = ''] = /"(.*)"/.exec(cardLabels([{ title: 'a";b:c</style>\\\n' }])) ?? [];
    expect(label.slice(1, -1)).not.toMatch(/["<>\n]/);
  });
});

describe('titles of columns in an attribute', () => {
  it('are quoted so that HTML needs no entity, whatever a title holds', () => {
    expect(cardStyle([{ title: 'Rating' }, { title: `Smith's "best" & most` }])).toBe(
      `--c1:'Rating: ';--c2:'Smith\\27 s \\22 best\\22  \\26  most: '`,
    );
  });
});
