import { bareText, type Match, type PatternSet } from './path-patterns';
import { isOneSlip } from './word-distance';

/** Against one wrong letter. */
const jointCost = 1;

/** Names whose dots or hyphens went wrong, so that the words can't be told apart: `stickthrottle.curve`. */
export function brokenJoints(set: PatternSet, path: string): readonly Match[] {
  const lower = path.toLowerCase();
  const bare = bareText(path);
  const count = path.split('.').length;
  const spelled = set.spellings.flatMap((known): readonly Match[] => {
    if (Math.abs(known.path.length - path.length) > 2) return [];
    const isJoined = known.pattern.slots.length !== count && isOneSlip(known.path, lower);
    if (known.bare !== bare && !isJoined) return [];
    return [{ pattern: known.pattern, path: known.path, why: 'spelling', cost: jointCost }];
  });
  const framed = set.frames.flatMap((frame): readonly Match[] => {
    const key = framedKey(frame.before, frame.after, path, lower);
    if (key === undefined) return [];
    const whole = `${frame.before}${key}${frame.after}`;
    return [{ pattern: frame.pattern, path: whole, why: 'spelling', cost: jointCost }];
  });
  return [...spelled, ...framed];
}

/** The free part of a path whose fixed part on one side is right and on the other one slip away. */
function framedKey(before: string, after: string, path: string, lower: string): string | undefined {
  const room = path.length - before.length - after.length;
  if (room < 0) return undefined;
  if (lower.startsWith(before)) {
    const lost = [-1, 0, 1].find((more) => isOneSlip(lower.slice(path.length - after.length - more), after));
    if (lost !== undefined) return freeWord(path.slice(before.length, path.length - after.length - lost));
  }
  if (lower.endsWith(after)) {
    const lost = [-1, 0, 1].find((more) => isOneSlip(lower.slice(0, before.length + more), before));
    if (lost !== undefined) return freeWord(path.slice(before.length + lost, path.length - after.length));
  }
  return undefined;
}

function freeWord(text: string): string | undefined {
  return text.length >= 2 && !text.includes('.') ? text : undefined;
}
