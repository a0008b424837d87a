import type { CraftView } from '../../../craft/view';
import { evenDivision } from '../../../physics/sampling';
import { parseQuantity } from '../../../units/quantity';
import { listed } from '../../report/listed';
import type { CodeRule, RuleFix } from '../../rule';

/** A third of 6.4 kHz ends in no digits: written as 2.133 kHz it is meant, and misses by less than this. */
const mostRounded = 0.005;

/** The whole part of the gyro's rate that a control rate is when its digits are rounded; null where it is none. */
function roundedPart(gyro: number, control: number): number | null {
  const part = Math.round(gyro / control);
  return part >= 1 && Math.abs(gyro / control - part) < mostRounded * part ? part : null;
}

/** Gyro and loop: rates that go together and that the board has. */
export const rateRules: readonly CodeRule[] = [
  {
    ids: ['tune/control-rate-uneven', 'tune/control-faster-than-gyro'],
    scope: 'craft',
    check(view, report) {
      const [gyro, control] = [view.quantity('gyro.rate'), view.quantity('control.rate')];
      if (gyro === null || control === null || gyro <= 0 || control <= 0) return;
      if (evenDivision(gyro, control) !== null) return;
      const isFaster = control > gyro;
      const part = roundedPart(gyro, control);
      const rates = (isFaster ? [gyro] : evenRates(gyro, control))
        .filter((rate) => rate >= (view.catalog.parameter('control.rate')?.range?.low ?? 0))
        .map((rate) => view.exact(rate, 'kHz'));
      const near = part === null ? rates : [part === 1 ? 'gyro.rate' : `gyro.rate / ${part}`];
      report({
        id: isFaster ? 'tune/control-faster-than-gyro' : 'tune/control-rate-uneven',
        at: 'control.rate',
        values: {
          gyro: view.amount(gyro, 'kHz'),
          control: part === null ? view.amount(control, 'kHz') : view.exact(control, 'kHz'),
          times:
            part === null ? view.amount(gyro / control, '') : String(Number((gyro / control).toPrecision(6))),
          stale: view.amount(1 - gyro / control, '%'),
          near: near.join(' or '),
        },
        related: [{ at: 'gyro.rate', message: 'The rate of the gyro.' }],
        fixes: near.map((to) => ({ title: 'Write {to}', set: 'control.rate', to })),
      });
    },
  },
  {
    ids: ['tune/gyro-rate-not-offered'],
    scope: 'craft',
    check(view, report) {
      const rates = view.hardware.gyro?.rates;
      const given = view.quantity('gyro.rate');
      if (rates === undefined || given === null) return;
      const offered = rates.flatMap((text) => parseQuantity(text)?.value ?? []);
      if (offered.some((rate) => Math.abs(rate / given - 1) < 1e-4)) return;
      report({
        id: 'tune/gyro-rate-not-offered',
        at: 'gyro.rate',
        values: {
          board: view.boardTitle,
          offered: listed(offered.map((rate) => view.exact(rate, 'kHz'))),
          given: view.amount(given, 'kHz'),
        },
        related: [{ at: 'board.profile', message: 'The board.' }],
        fixes: nearest(view, offered, given),
      });
    },
  },
  {
    ids: ['tune/full-scale-beyond-board'],
    scope: 'craft',
    check(view, report) {
      const given = view.quantityOr('gyro.full-scale', null);
      const most = parseQuantity(view.hardware.gyro?.fullScale ?? '')?.value;
      if (most === undefined || given === null || given <= most * 1.0001) return;
      const text = view.exact(most, 'deg/s');
      report({
        id: 'tune/full-scale-beyond-board',
        at: 'gyro.full-scale',
        values: { board: view.boardTitle, most: text, given: view.amount(given, 'deg/s') },
        fixes: [{ title: 'Write {to}', set: 'gyro.full-scale', to: text }],
      });
    },
  },
];

/** A loop that leaves out more samples than this between two steps flies nothing. */
const mostParts = 1000;

/**
 * The next rate below and above that divides the gyro's, Hz, the nearer one first: in whole hertz where there
 * are such, since nobody sets 2.6666 kHz.
 */
function evenRates(gyro: number, control: number): readonly number[] {
  const parts = Array.from({ length: mostParts }, (_, index) => gyro / (index + 1));
  const whole = parts.filter((rate) => Math.abs(rate - Math.round(rate)) < 1e-6);
  const near = around(whole.map(Math.round), control);
  const found = near.length > 0 ? near : around(parts, control);
  return [...found].sort((one, other) => Math.abs(one - control) - Math.abs(other - control));
}

/** Of falling rates the last one above and the first one below. */
function around(rates: readonly number[], control: number): readonly number[] {
  const above = rates.filter((rate) => rate > control).at(-1);
  const below = rates.find((rate) => rate < control);
  return [above, below].flatMap((rate) => rate ?? []);
}

function nearest(view: CraftView, offered: readonly number[], given: number): readonly RuleFix[] {
  const [best] = [...offered].sort((one, other) => Math.abs(one - given) - Math.abs(other - given));
  if (best === undefined) return [];
  const text = view.exact(best, 'kHz');
  return [{ title: 'Write {to}', set: 'gyro.rate', to: text }];
}
