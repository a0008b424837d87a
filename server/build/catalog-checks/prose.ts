import type { Bundle } from '../../src/catalog/model/bundle';
import type { Parameter } from '../../src/catalog/model/parameter';
import { placedParameters } from './places';

/** Explanations: of a fit length, and no sentence twice in the whole catalogue. */
export function proseProblems(bundle: Bundle): readonly string[] {
  const long = placedParameters(bundle).flatMap(({ at, parameter }) => {
    const count = parameter.summary.split(/\s+/).length;
    return count >= 12 && count <= 90 ? [] : [`${at}.summary: has ${count} words, expected 12 to 90`];
  });
  return [...long, ...repeatedSentences(allProse(bundle))];
}

/** A text and where it stands. */
export interface Prose {
  readonly at: string;
  readonly text: string;
}

function repeatedSentences(prose: readonly Prose[]): readonly string[] {
  const first = new Map<string, string>();
  return prose.flatMap(({ at, text }) =>
    text.split(/(?<=[.!?])\s+/).flatMap((sentence) => {
      const key = sentence
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, ' ')
        .trim();
      const before = first.get(key);
      first.set(key, before ?? at);
      return before === undefined ? [] : [`${at}: "${sentence}" stands in ${before} already`];
    }),
  );
}

/** The words of regions are left out: each of them must give the same caution. */
export function allProse(bundle: Bundle): readonly Prose[] {
  const { collections, links, signals, chemistries, grids, bands, boards } = bundle;
  const members = collections.flatMap(({ keys }) => (keys.kind === 'closed' ? keys.members : []));
  const rows = [...links, ...signals, ...chemistries, ...grids, ...bands, ...boards, ...members];
  return [
    ...bundle.parameters.map(({ group, summary }) => ({ at: `group ${group}`, text: summary })),
    ...placedParameters(bundle).flatMap(({ at, parameter }) => proseOf(at, parameter)),
    ...collections.map(({ path, summary }) => ({ at: `collection ${path}`, text: summary })),
    ...rows.map(({ name, summary = '' }) => ({ at: name, text: summary })),
  ];
}

function proseOf(at: string, parameter: Parameter): readonly Prose[] {
  const { summary, risk, prove } = parameter;
  const slope = 'higher' in parameter ? [parameter.higher, parameter.lower] : [];
  const choices = 'choices' in parameter ? (parameter.choices ?? []) : [];
  const words = 'orWords' in parameter ? (parameter.orWords ?? []) : [];
  const assumed = parameter.default === null ? [] : [parameter.default.from];
  return [
    ...[summary, risk, prove, ...slope, ...assumed].map((text) => ({ at, text })),
    ...[...choices, ...words].flatMap((choice) => [
      { at: `${at} (${choice.name})`, text: choice.summary },
      ...(choice.risk === undefined ? [] : [{ at: `${at} (${choice.name})`, text: choice.risk }]),
    ]),
  ];
}
