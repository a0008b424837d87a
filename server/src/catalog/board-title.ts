import type { BoardProfile } from './model/board-profile';

/** What a board is called in a sentence. Not beside the model, which only what reads files loads. */
export function titleOf({ title, name }: BoardProfile): string {
  return title ?? name;
}
