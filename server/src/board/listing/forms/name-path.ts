import type { Stretch } from '../listing';

/** A name, and the groups that stand in front of it. */
interface NameInGroups {
  readonly groups: readonly string[];
  readonly name: string;
  readonly at: Stretch;
}

const mostSteps = 64;

/** Parts the groups from a name that holds them; one with an empty step is kept whole. */
export function pathOf(text: string, at: Stretch, path: string | undefined): NameInGroups {
  const steps = path === undefined ? [text] : text.split(path).map((step) => step.trim());
  const name = steps.at(-1) ?? '';
  if (steps.length < 2 || steps.length > mostSteps || steps.includes(''))
    return { groups: [], name: text, at };
  return { groups: steps.slice(0, -1), name, at: { start: at.end - name.length, end: at.end } };
}
