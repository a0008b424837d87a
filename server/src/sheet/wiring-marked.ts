import type { Finding } from '../checks/report/finding';
import type { CraftView } from '../craft/view';

/** Whether something about the wiring was found on the line that sets a parameter. */
export function isWiringMarked(view: CraftView, path: string, findings: readonly Finding[]): boolean {
  const origin = view.setting(path)?.origin;
  return findings.some(
    ({ level, accepted, place, check }) =>
      (level === 'must-fix' || (level === 'risk' && accepted === null)) &&
      check.id.startsWith('wire/') &&
      place.line === origin?.line,
  );
}
