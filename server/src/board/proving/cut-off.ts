import type { Listing } from '../listing/listing';

/** How a listing shows that part of it is missing, as the end of a sentence; null where it looks whole. */
export function cutOff({ forms, closings, settings }: Listing): string | null {
  if (forms.closing.length === 0) return null;
  if (closings.length === 0) return 'its closing line is missing';
  const count = closings.find((line) => line.count !== null)?.count ?? null;
  if (count === null || count === settings.length) return null;
  return `its closing line counts ${count} settings, and ${settings.length} are there`;
}
