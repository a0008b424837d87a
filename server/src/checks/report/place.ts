import type { Craft } from '../../craft/craft';
import { inputKeys } from '../../craft/keys';
import type { PlacedLine } from '../../craft/setting';
import type { CraftView } from '../../craft/view';
import type { Span } from '../../language/ast';
import { pathText, stepsOf } from '../../language/path-text';
import type { RuleRelated } from '../rule';
import type { Finding, Place, Related } from './finding';

/** Where a finding about a parameter stands: in the script that is checked, and where its line really is. */
export interface ParameterPlace {
  readonly place: Place;
  /** The line itself, when it is in an included script. */
  readonly elsewhere: Place | null;
  /** The line whose comment may accept the finding. */
  readonly acceptedOn: PlacedLine;
}

/** Finds the place of a parameter: its line, else its section's header, else the craft's, else the first line. */
export function standingOf(view: CraftView, path: string, mark: 'value' | 'name'): ParameterPlace {
  const origin = view.setting(path)?.origin;
  if (origin !== undefined) return standing(view.craft, placeIn(origin, mark));
  return standing(view.craft, headerFor(view, path));
}

function wholeLine({ script, line }: PlacedLine): Place {
  return { script, line, ...contentSpan(line.text) };
}

/** The part of a line that is marked: its value, its name, or all of it where it has neither. */
export function placeIn({ script, line }: PlacedLine, mark: 'value' | 'name'): Place {
  const { statement } = line;
  if (statement.kind === 'setting') {
    const span = mark === 'value' ? (statement.value ?? statement.path) : statement.path;
    return { script, line, start: span.start, end: span.end };
  }
  if (statement.kind === 'section')
    return { script, line, start: statement.path.start, end: statement.path.end };
  return wholeLine({ script, line });
}

function headerFor(view: CraftView, path: string): Place {
  const steps = stepsOf(path);
  const sections = steps.slice(1).map((_, index) => pathText(steps.slice(0, steps.length - 1 - index)));
  for (const section of [...sections, 'craft']) {
    const header = view.craft
      .lines(inputKeys.section(section))
      .find(({ line }) => line.section.pack === null);
    if (header !== undefined) return placeIn(header, 'name');
  }
  return firstLine(view.craft);
}

function firstLine(craft: Craft): Place {
  return wholeLine(craft.firstLine());
}

/** A place in an included script is shown at the include line of the script that is checked. */
export function standing(craft: Craft, place: Place): ParameterPlace {
  const acceptedOn = { script: place.script, line: place.line };
  if (place.script === craft.root) return { place, elsewhere: null, acceptedOn };
  const layer = craft.layers().layers.find(({ script }) => script === place.script);
  const first = layer?.through[0];
  if (first === undefined) return { place: firstLine(craft), elsewhere: place, acceptedOn };
  return { place: includePlace(first), elsewhere: place, acceptedOn };
}

function includePlace(at: PlacedLine): Place {
  const { statement } = at.line;
  if (statement.kind !== 'include') return wholeLine(at);
  return { ...at, start: statement.path.start, end: statement.path.end };
}

/** Whether what a finding is about stands in an included script: its first related place then says where. */
export function isOfIncluded({ place, related }: Pick<Finding, 'place' | 'related'>): boolean {
  const [first] = related;
  return (
    place.line.statement.kind === 'include' && first !== undefined && first.place.script !== place.script
  );
}

/** A related place; left out where the parameter has no line. */
export function relatedTo(view: CraftView, { at, message, values }: RuleRelated): readonly Related[] {
  const origin = view.setting(at)?.origin;
  return origin === undefined ? [] : [{ place: placeIn(origin, 'value'), message, values }];
}

function contentSpan(text: string): Span {
  const start = text.length - text.trimStart().length;
  return {
    start: start === text.length ? 0 : start,
    end: Math.max(text.trimEnd().length, start === text.length ? 0 : start),
  };
}
