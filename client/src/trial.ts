import * as vscode from 'vscode';
import {
  type SettingToTry,
  type TryAnswer,
  tryableRequest,
  tryRequest,
} from '../../server/src/lsp/values-protocol';
import type { TrialShown } from '../sheet/messages';
import { about } from './about';
import { applyEdits } from './apply-edits';
import type { Client } from './client';

const { t } = vscode.l10n;

interface Trying {
  readonly uri: vscode.Uri;
  readonly setting: SettingToTry;
  /** As a script would write it; null: nothing has been tried yet. */
  readonly to: string | null;
}

/**
 * A value that is tried before it is written. The extension keeps it, so that a page that was hidden finds it
 * again. Of values that come faster than they can be computed only the last is.
 */
export class ValueTrial {
  private trying: Trying | null = null;
  private asked = 0;

  constructor(
    private readonly client: Client,
    private readonly show: (shown: TrialShown | null) => void,
  ) {}

  get uri(): vscode.Uri | undefined {
    return this.trying?.uri;
  }

  /** `to`: what is tried first, as a script would write it. */
  async start(uri: vscode.Uri, setting: SettingToTry, to: string | null = null): Promise<void> {
    this.trying = { uri, setting, to };
    if ((await this.refresh()) || this.trying?.setting !== setting) return;
    this.leave();
    void vscode.window.showInformationMessage(
      t('Other values of {path} can’t be tried: it holds no number or word.', { path: setting.path }),
    );
  }

  async change(to: string): Promise<void> {
    if (this.trying === null) return;
    this.trying = { ...this.trying, to };
    await this.refresh();
  }

  leave(): void {
    this.trying = null;
    this.asked += 1;
    this.show(null);
  }

  /**
   * Shows it as the script stands now: after an edit of somebody else, or to a page that has just come. False when
   * there is nothing that can be tried.
   */
  async refresh(): Promise<boolean> {
    const { trying } = this;
    if (trying === null) {
      this.show(null);
      return false;
    }
    this.asked += 1;
    const mine = this.asked;
    const tryable = await this.client.request(tryableRequest, { ...about(trying.uri), ...trying.setting });
    if (tryable === null) return false;
    if (mine !== this.asked) return true;
    const tried = await this.tried(trying);
    if (mine === this.asked) this.show({ tryable, to: trying.to, tried });
    return true;
  }

  /** Writes the value as one edit that can be undone. */
  async write(): Promise<void> {
    const { trying } = this;
    if (trying === null || trying.to === null) return;
    const answer = await this.tried(trying);
    const said = await written(trying.uri, answer);
    if (said === null) this.leave();
    else
      void vscode.window.showWarningMessage(
        t('{path} was not written: {reason}.', { path: trying.setting.path, reason: said }),
      );
  }

  private async tried({ uri, setting, to }: Trying): Promise<TryAnswer | null> {
    return to === null ? null : this.client.request(tryRequest, { ...about(uri), ...setting, to });
  }
}

/** Null when it is done; else why not. */
async function written(uri: vscode.Uri, answer: TryAnswer | null): Promise<string | null> {
  if (answer === null) return t('the script is not open any more');
  return answer.refusal === null ? applyEdits(uri, answer) : t('the script would refuse the value');
}
