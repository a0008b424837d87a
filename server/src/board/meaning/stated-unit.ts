import type { Stated } from '../listing/listing';

/**
 * A value with the unit that stands beside it, where that is another one than its profile knows: some boards write the
 * same setting as 900 ms and as 1.2 s. As it stands where the two agree, or one is silent.
 */
export function inItsUnit(
  value: string,
  stated: Pick<Stated, 'unit'> | null,
  unit: string | undefined,
): string {
  return isInOther(stated, unit) ? `${value} ${stated?.unit ?? ''}` : value;
}

/** Whether a line says another unit than the profile has. */
export function isInOther(stated: Pick<Stated, 'unit'> | null, unit: string | undefined): boolean {
  const own = stated?.unit ?? null;
  return unit !== undefined && own !== null && own !== unit;
}
