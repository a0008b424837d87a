import { type KeptBeside, nothingBeside } from '../board/kept/accepted';
import { keptBeside } from '../catalog/model/kept-beside';
import { splitLines } from '../language/split-lines';
import { readShape } from './read-addition';

const longest = 5_000_000;

/** What a file beside a board's text says; where it is damaged, the place and why. */
export function besideIn(text: string): KeptBeside {
  const shaped = readShape(text, keptBeside, { longest, mayHaveComments: false });
  if (shaped.kind === 'broken') {
    const [first] = shaped.problems;
    const line = splitLines(text.slice(0, first?.start ?? 0)).length;
    return { ...nothingBeside, fault: `line ${line}: ${first?.message ?? 'it is damaged'}` };
  }
  const { board = null, accepted = [] } = shaped.data;
  return {
    board,
    accepted: accepted.map(({ setting, occurrence = 1, value: item, check, reason }) => ({
      setting: { groups: setting.slice(0, -1), name: setting.at(-1) ?? '', occurrence, item },
      check,
      reason,
    })),
    fault: null,
  };
}
