import type { Connection, ProgressToken } from 'vscode-languageserver';
import type { Session } from '../session';

/** Of less work than this no progress is shown: it is done at once. */
const littleWork = 32;

type Reporter = Pick<
  Awaited<ReturnType<Connection['window']['createWorkDoneProgress']>>,
  'begin' | 'report' | 'done'
>;

/** Shows how far long work is: where the request asks for it, else where the client shows such things. */
export class ShownProgress {
  private reporter: Reporter | null = null;

  constructor(
    private readonly connection: Connection,
    private readonly session: Session,
    private readonly token: ProgressToken | undefined,
    private readonly title: string,
  ) {}

  async report(done: number, of: number, text = `${done} of ${of}`): Promise<void> {
    if (of < littleWork) return;
    const percentage = (100 * done) / of;
    if (this.reporter !== null) {
      this.reporter.report(percentage, text);
      return;
    }
    this.reporter = await this.newReporter();
    this.reporter?.begin(this.title, percentage, text, false);
  }

  end(): void {
    this.reporter?.done();
    this.reporter = null;
  }

  private async newReporter(): Promise<Reporter | null> {
    const { window } = this.connection;
    if (this.token !== undefined) return window.attachWorkDoneProgress(this.token);
    if (!this.session.client.showsProgress) return null;
    return window.createWorkDoneProgress().catch(() => null);
  }
}
