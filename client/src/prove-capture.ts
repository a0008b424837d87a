import * as vscode from 'vscode';
import { type ProveAnswer, proveRequest } from '../../server/src/lsp/board-protocol';
import { about } from './about';
import { type Capture, pickCapture } from './captures';
import type { Client } from './client';
import type { Explanations } from './explanations';
import { nameOf } from './file-name';
import { activeScript } from './language';
import { pickBoard } from './pick-board';
import { teach } from './teach';

const { t } = vscode.l10n;

type ProofAnswer = Extract<ProveAnswer, { kind: 'proof' }>;

/**
 * Holds the active craft script against captured texts: as a table, and as findings in the capture, which go with the
 * table.
 */
export class Proofs implements vscode.Disposable {
  private readonly found = vscode.languages.createDiagnosticCollection('propsoff-proof');
  private readonly closing = vscode.workspace.onDidChangeTextDocument(({ document }) =>
    // What was found in a text says nothing of the text that it became.
    this.found.delete(document.uri),
  );

  /** The title of the proof that is shown. */
  private title = '';
  private readonly leaving: vscode.Disposable;

  constructor(
    private readonly client: Client,
    private readonly explanations: Explanations,
  ) {
    this.leaving = explanations.onClosed((about) => {
      if (about === this.title) this.clear();
    });
  }

  /** Takes away what the last proof has marked. */
  clear(): void {
    this.found.clear();
  }

  async compare(): Promise<void> {
    const script = activeScript()?.document.uri;
    if (script === undefined) {
      void vscode.window.showInformationMessage(
        t('First open the craft script, or the board text, that the board was set up with.'),
      );
      return;
    }
    const capture = await pickCapture(t('Compare with Captured Text'));
    if (capture === undefined) return;
    await this.prove(script, capture, false);
  }

  /** Shows the proof; what it asks is answered by a press, and proved anew. */
  private async prove(script: vscode.Uri, capture: Capture, omitsDefaults: boolean): Promise<void> {
    const proof = await this.proof(script, capture.text, omitsDefaults);
    if (proof === undefined) return;
    this.title = t('proof of {name}', { name: nameOf(script) });
    await this.explanations.show(this.title, proof.markdown);
    this.mark(capture, proof);
    const show = proof.isWhole ? vscode.window.showInformationMessage : vscode.window.showWarningMessage;
    if (proof.question === null) {
      void show(proof.summary);
      return;
    }
    const only = t('It Lists Only What Differs');
    if ((await show(`${proof.summary} ${proof.question}`, only)) !== only) return;
    await teach(this.client, script, { kind: 'omits-defaults', line: null, part: '' });
    await this.prove(script, capture, true);
  }

  dispose(): void {
    for (const one of [this.found, this.closing, this.leaving]) one.dispose();
  }

  private async proof(
    script: vscode.Uri,
    capture: string,
    omitsDefaults: boolean,
  ): Promise<ProofAnswer | undefined> {
    const asked = { ...about(script), capture, board: null, omitsDefaults };
    let answer = await this.client.request(proveRequest, asked);
    if (answer?.kind === 'no-board') {
      const board = await pickBoard(answer.boards, answer.message);
      if (board === undefined) return undefined;
      answer = await this.client.request(proveRequest, { ...asked, board });
    }
    if (answer?.kind === 'proof') return answer;
    void vscode.window.showErrorMessage(answer?.message ?? t('Propsoff’s checks are not running.'));
    return undefined;
  }

  private mark({ uri, text }: Capture, { problems }: ProofAnswer): void {
    if (uri === null) return;
    const lines = text.split(/\r\n|\n|\r/);
    const marks = problems.map(({ line, message }) => {
      const range = new vscode.Range(line, 0, line, lines[line]?.length ?? 0);
      const mark = new vscode.Diagnostic(range, message, vscode.DiagnosticSeverity.Warning);
      mark.source = 'propsoff';
      mark.code = 'board/proof';
      return mark;
    });
    this.found.set(uri, marks);
  }
}
