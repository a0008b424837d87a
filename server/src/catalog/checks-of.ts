import type { Bundle } from './model/bundle';
import type { Check } from './model/check';

/** The checks of all files. */
export function checksOf({ checks }: Pick<Bundle, 'checks'>): readonly Check[] {
  return checks.flatMap((file) => file.checks);
}
