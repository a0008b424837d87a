import * as vscode from 'vscode';
import { type SalesAnswers, type SalesQuestion, salesPageRequest } from '../../server/src/lsp/protocol';
import type { Client } from './client';

const { t } = vscode.l10n;

interface SalesPrompt {
  readonly question: SalesQuestion;
  readonly title: string;
  readonly example: string;
}

const noAnswers: SalesAnswers = { size: '', kv: '', cells: '', propeller: '' };

/** Asks what a sales page tells, one short question after the other, and gives a script of it; undefined if left. */
export async function scriptFromSalesPage(client: Client): Promise<string | undefined> {
  const all: readonly SalesPrompt[] = [
    { question: 'size', title: t('size of the propellers or the motors'), example: '5 in, 2207' },
    { question: 'kv', title: t('kv of the motors'), example: '1950' },
    { question: 'cells', title: t('cells of the pack'), example: '4S' },
    { question: 'propeller', title: t('propeller'), example: '5x4.3x3' },
  ];
  let answers = noAnswers;
  for (const [index, { question, title, example }] of all.entries()) {
    const typed = await vscode.window.showInputBox({
      title: t('From a Sales Page ({number} of {all}): {question}', {
        number: index + 1,
        all: all.length,
        question: title,
      }),
      prompt: t('Enter skips this question: the script then has what is usual, and says so.'),
      placeHolder: t('such as {example}', { example }),
      ignoreFocusOut: true,
      validateInput: async (text) => {
        const asked = { ...noAnswers, [question]: text };
        return text.trim() === '' ? null : (await client.request(salesPageRequest, asked))?.faults[question];
      },
    });
    if (typed === undefined) return undefined;
    answers = { ...answers, [question]: typed };
  }
  const answer = await client.request(salesPageRequest, answers);
  if (answer?.text == null) {
    void vscode.window.showErrorMessage(t('Propsoff’s checks are not running.'));
    return undefined;
  }
  return answer.text;
}
