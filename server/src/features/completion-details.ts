import type { Catalog } from '../catalog/catalog';
import type { ItemSubject } from './completion-item';
import { explainCheck, explainParameter } from './explain';
import { choiceLine } from './parameter-text';

/** The description of a completion item, as Markdown; null where there is nothing to say. */
export function completionDetails(catalog: Catalog, subject: ItemSubject): string | null {
  switch (subject.kind) {
    case 'parameter':
      return explainParameter(catalog, subject.name);
    case 'choice': {
      const parameter = catalog.parameters.get(subject.parameter)?.parameter;
      const choice = parameter && catalog.choices(parameter).find(({ name }) => name === subject.choice);
      return choice === undefined ? null : choiceLine(choice).slice(2);
    }
    case 'check':
      return explainCheck(catalog, subject.id);
    case 'none':
      return null;
  }
}
