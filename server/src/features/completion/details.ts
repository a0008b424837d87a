import type { Catalog } from '../../catalog/catalog';
import type { Parameter } from '../../catalog/model/parameter';
import { explainCheck, explainParameter } from '../hover/explain';
import { choiceText } from '../hover/parameter-text';
import { escaped } from '../markdown';
import type { ItemSubject } from './item';

/** The description of a completion item, as Markdown; null where there is nothing to say. */
export function completionDetails(catalog: Catalog, subject: ItemSubject): string | null {
  switch (subject.kind) {
    case 'parameter':
      return explainParameter(catalog, subject.name);
    case 'choice': {
      const parameter = (catalog.parameters.get(subject.parameter) ?? catalog.parameter(subject.parameter))
        ?.parameter;
      return parameter === undefined ? null : choiceDetails(catalog, parameter, subject.choice);
    }
    case 'check':
      return explainCheck(catalog, subject.id);
    case 'none':
      return null;
  }
}

function choiceDetails(catalog: Catalog, parameter: Parameter, word: string): string | null {
  if (parameter.kind === 'flag') return escaped(word === 'on' ? parameter.higher : parameter.lower);
  const choice = catalog.choices(parameter).find(({ name }) => name === word);
  return choice === undefined ? null : choiceText(choice);
}
