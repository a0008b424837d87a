import {
  type SalesAnswers,
  type SalesQuestion,
  salesFault,
  salesPageScript,
  salesQuestions,
} from '../../features/new-script/sales-page';
import type { SalesPageAnswer } from '../protocol';
import type { Services } from './row';

/** A script of what a sales page tells; it is open nowhere yet. */
export async function salesPage(
  { session: { workspace } }: Services,
  answers: SalesAnswers,
): Promise<SalesPageAnswer> {
  const { catalog } = workspace;
  const faults: Partial<Record<SalesQuestion, string>> = {};
  for (const question of salesQuestions) {
    const fault = salesFault(catalog, question, answers[question]);
    if (fault !== null) faults[question] = fault;
  }
  if (Object.keys(faults).length > 0) return { faults, text: null };
  const craftOf = (text: string) => workspace.detached('propsoff:/sales-page.craft', text);
  return { faults, text: await salesPageScript(catalog, answers, craftOf) };
}
