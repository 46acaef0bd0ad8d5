import { about, aboutContent, entry, partIn } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

export const outputOrderCases = {
  // Common practice, no source.
  'output-order-assumed': {
    fires: [
      {
        name: 'two outputs whose names tell nothing',
        about: () =>
          aboutContent((content) => {
            const { terminals } = partIn(content, 'radio', 'source-unit');
            terminals.OUT2 = { ...entry(terminals, 'OUT') };
            content.job['left-open'] = { 'radio.OUT2': 'not used' };
          }),
        level: 'note',
        subject: 'radio',
        file: 'parts.yaml',
        says: /OUT front left/,
      },
    ],
    quiet: [
      { name: 'one output', about: () => about() },
      {
        name: 'what it carries is written',
        about: () =>
          aboutContent((content) => {
            const radio = partIn(content, 'radio', 'source-unit');
            radio.terminals.OUT2 = { ...entry(radio.terminals, 'OUT') };
            radio.outputs = { OUT: { carries: 'rear-left' } };
            content.job['left-open'] = { 'radio.OUT2': 'not used' };
          }),
      },
    ],
  },
} satisfies RuleCases;
