import type { CancellationToken, Connection, ProgressToken } from 'vscode-languageserver';
import type { Craft } from '../../craft/craft';
import { fileName } from '../../craft/include-path';
import type { Pace, Survey } from '../../workspace/closed-scripts';
import { mostScripts, type Unread } from '../../workspace/file-system';
import { stopIfCancelled } from '../cancelled';
import { MessageType, ShowMessageNotification } from '../library';
import type { Session } from '../session';
import type { AdditionDocuments } from './addition-documents';
import { ShownProgress } from './shown-progress';
import { nextTurn } from './turn';

/** What a request says about its progress. */
export interface Looking {
  /** The script that it is about; null: none. */
  readonly about: string | null;
  /** Where the client wants to be told of the progress, if it does. */
  readonly workDoneToken?: ProgressToken | undefined;
  /** Whether a person waits for the answer: then they are told what could not be read. */
  readonly isAwaited: boolean;
  /** What is done, as a progress says it. */
  readonly title?: string;
}

/** All scripts of the workspace, whether somebody has opened them or not: what answers from all of them asks here. */
export class WholeWorkspace {
  /** What the person was told of: each thing is told once. */
  private readonly reported = new Set<string>();

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly additions: AdditionDocuments,
  ) {}

  /**
   * The crafts of all scripts, the open ones first.
   * @throws {ResponseError} when the client loses interest
   */
  crafts(looking: Looking, token: CancellationToken): Promise<readonly Craft[]> {
    return this.during(looking, token, async ({ closed }, pace) => {
      const crafts = await this.session.workspace.closed.crafts(closed, pace);
      return [...this.session.openCrafts(), ...crafts];
    });
  }

  /** Does something with all scripts, once what has not been read yet is read. */
  async during<T>(
    { about, workDoneToken, isAwaited, title = 'Reading scripts' }: Looking,
    token: CancellationToken,
    work: (survey: Survey, pace: Pace) => Promise<T>,
  ): Promise<T> {
    const { closed } = this.session.workspace;
    const progress = new ShownProgress(this.connection, this.session, workDoneToken, title);
    const pace = paced(token, progress);
    try {
      await this.additions.broughtIn();
      // Where nobody tells what happens on the disk, it is looked at each time.
      if (!this.session.client.watchesFiles) closed.forgetLists();
      let survey = await closed.survey(about, pace);
      if (!this.session.client.watchesFiles && (await closed.areOutdated(survey.closed)))
        survey = await closed.survey(about, pace);
      this.report(survey, isAwaited);
      return await work(survey, pace);
    } finally {
      progress.end();
    }
  }

  /** Shows how far other long work is. */
  progress(token: ProgressToken | undefined, title: string): ShownProgress {
    return new ShownProgress(this.connection, this.session, token, title);
  }

  /**
   * Reads the profiles of the boards that closed scripts name, all at once: with each that comes the workspace knows
   * more, and every script is read anew.
   */
  async boardsOf(closed: readonly string[], pace: Pace): Promise<void> {
    for (const craft of await this.session.workspace.closed.crafts(closed, pace)) craft.board();
    await this.additions.broughtIn();
  }

  private report({ unread, isCut }: Survey, isAwaited: boolean): void {
    const fresh = unread.filter((one) => !this.reported.has(keyOf(one)));
    const said = [...(fresh.length > 0 ? [unreadText(fresh)] : []), ...(isCut ? [cutText] : [])];
    for (const text of said) {
      if (this.reported.has(text)) continue;
      this.reported.add(text);
      if (isAwaited) this.show(text);
      else this.connection.console.warn(text);
    }
    if (isAwaited) for (const one of fresh) this.reported.add(keyOf(one));
  }

  /** Shows the person a sentence. */
  show(message: string): void {
    void this.connection.sendNotification(ShowMessageNotification.type, {
      type: MessageType.Warning,
      message,
    });
  }
}

const cutText = `The workspace has more than ${mostScripts} scripts or very many folders: the rest was not looked at.`;

function keyOf({ uri, why }: Unread): string {
  return `${uri} ${why}`;
}

/** More names than this nobody reads in a message. */
const mostNamed = 5;

function unreadText(unread: readonly Unread[]): string {
  const named = unread.slice(0, mostNamed).map(({ uri, why }) => `${fileName(uri)} (${why})`);
  const rest = unread.length > mostNamed ? ` and ${unread.length - mostNamed} more` : '';
  return `Not everything in the workspace could be read, so this was left out: ${named.join(', ')}${rest}.`;
}

/** Lets other messages in between, and ends when the client has lost interest. */
function paced(token: CancellationToken, progress?: ShownProgress): Pace {
  return async (at) => {
    if (at !== undefined) await progress?.report(at.done, at.of);
    await new Promise<void>((resolve) => nextTurn(resolve));
    stopIfCancelled(token);
  };
}
