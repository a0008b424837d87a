import { CraftView } from '../../../craft/view';
import { packFlown } from '../../../figures/flights';
import type { CodeRule, RuleFinding } from '../../rule';

/** A flight with the craft as it was flown. The pack is looked up when it is asked for: most rules end before. */
export class Flight {
  constructor(
    private readonly noted: CraftView,
    readonly name: string,
  ) {}

  /** The pack that was in; null where the note names none, and the craft has more or none. */
  get pack(): string | null {
    return packFlown(this.noted, this.name);
  }

  /** The craft with that pack. */
  get view(): CraftView {
    return new CraftView(this.noted.craft, this.pack);
  }
}

export function flights(view: CraftView): readonly Flight[] {
  return view.members('flight').map((name) => new Flight(view, name));
}

/** A rule about each flight by itself. `of`: what there is to say of one; null: nothing. */
export function perFlight(
  id: string,
  of: (view: CraftView, flight: Flight) => Omit<RuleFinding, 'id'> | null,
): CodeRule {
  return {
    ids: [id],
    scope: 'craft',
    each: 'flight',
    check(view, report, name) {
      const finding = of(view, new Flight(view, name));
      if (finding !== null) report({ id, ...finding });
    },
  };
}

/** `2026-05-14`; null where the note tells no date. */
export function flightDate(view: CraftView, name: string): string | null {
  return dateOf(view, `flight.${name}.date`);
}

export function dateOf(view: CraftView, path: string): string | null {
  const value = view.value(path);
  return value?.kind === 'date' ? value.value : null;
}
