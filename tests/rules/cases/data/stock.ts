import { aboutPlan } from '../../case.ts';
import type { RuleCases } from '../../rule-case.ts';

export const stockCases = {
  // The shop's own stock.
  'stock-short': {
    fires: [
      {
        name: '14 ft that no single reel holds',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'reel',
                title: 'Wire',
                kind: 'wire',
                quantity: 4.27,
                unit: 'm',
                stockQuantity: 4.88,
                short: 1.83,
              },
            ];
          }),
        level: 'caution',
        subject: 'reel',
        file: 'shop.yaml',
        says: /no single reel/,
      },
    ],
    quiet: [
      {
        name: 'enough, and a fuse that has a rule of its own',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'lug',
                title: 'Lug',
                kind: 'terminal',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 4,
                short: 0,
              },
              {
                part: 'some-fuse',
                title: 'Fuse',
                kind: 'fuse',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 2,
                short: 2,
              },
            ];
          }),
      },
    ],
  },
  'to-order': {
    fires: [
      {
        name: 'two lugs short',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'lug',
                title: 'Lug',
                kind: 'terminal',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 2,
                short: 2,
              },
            ];
          }),
        level: 'caution',
        subject: 'lug',
        path: '/stock',
        file: 'shop.yaml',
      },
      {
        name: 'one list of what is short',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = ['amp-a', 'woofer-a'].map((part) => ({
              part,
              title: part,
              kind: 'amplifier',
              quantity: 2,
              unit: 'piece',
              stockQuantity: part === 'amp-a' ? 0 : 1,
              short: part === 'amp-a' ? 2 : 1,
            }));
          }),
        level: 'caution',
        subject: 'amp-a',
        file: 'shop.yaml',
        says: /^to order for this job: 2 pieces of amp-a, 1 piece of woofer-a \(the job takes 2, the shelf has 1\)$/,
      },
    ],
    quiet: [
      {
        name: 'enough, and a fuse that has a rule of its own',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'lug',
                title: 'Lug',
                kind: 'terminal',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 4,
                short: 0,
              },
              {
                part: 'some-fuse',
                title: 'Fuse',
                kind: 'fuse',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 2,
                short: 2,
              },
            ];
          }),
      },
    ],
  },
} satisfies RuleCases;
