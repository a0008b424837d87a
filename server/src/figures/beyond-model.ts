import type { CraftView } from '../craft/view';
import { carriedBy } from './drive';
import { hovering } from './drive-states';

/**
 * Why there is nothing of motors, propellers and pack although all of them are known, in a sentence. Null where there
 * is: then it is for something else.
 */
export function beyondModel(view: CraftView): string | null {
  const carried = carriedBy(view);
  if (carried === null) return 'What is written of motors, propellers and pack does not go together.';
  return hovering(carried.value.likely) === null ? 'Motors and pack can’t hold the craft up.' : null;
}
