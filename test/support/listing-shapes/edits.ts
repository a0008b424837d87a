import { type DrawnBoard, fittingValue, itemOf } from './generate';
import type { Item } from './listing';
import { Lot } from './lot';

/** The same board with another value of one setting, in the same look; null where there is no other. */
export function withAnotherValue(board: DrawnBoard, index: number, seed: number): DrawnBoard | null {
  const item = board.items[index];
  if (item === undefined) return null;
  const lot = new Lot(seed);
  for (let tries = 0; tries < 20; tries += 1) {
    const value = fittingValue(board.shape, board.house, item.value.look, lot);
    const changed = { ...item, value: { ...value, unit: item.value.unit } };
    if (value.text !== item.value.text && value.look === item.value.look && isAllowed(changed)) {
      return { ...board, items: board.items.with(index, changed) };
    }
  }
  return null;
}

/** Whether a value is among what its listing says of it. */
function isAllowed({ value, stated }: Item): boolean {
  if (stated?.words != null) return stated.words.includes(value.text);
  if (stated?.range == null) return true;
  const number = Number(value.text);
  return number >= Number(stated.range.low) && number <= Number(stated.range.high);
}

/** The same board without one setting. */
export function withoutSetting(board: DrawnBoard, index: number): DrawnBoard {
  return { ...board, items: board.items.toSpliced(index, 1) };
}

/** The same board with one setting more, behind another; its name is like none before. */
export function withOneMore(board: DrawnBoard, index: number, seed: number): DrawnBoard {
  const groups = board.items[index]?.groups ?? [];
  const more = itemOf(board.shape, board.house, 0, groups, 'kingfisher', new Lot(seed));
  return { ...board, items: board.items.toSpliced(index + 1, 0, more) };
}
