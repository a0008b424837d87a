import type {
  BoardMeanings,
  MeaningChoice,
  MeaningRow,
  SaidOfRow,
} from '../../server/src/lsp/board-protocol';
import { ask } from './extension-side';

/** What a press changed, to be taken back. */
interface Press {
  readonly before: readonly SaidOfRow[];
  readonly what: string;
}

/** What the page knows of the board: its settings, what was said, and what each row would say if it were taken. */
export class Board {
  private readonly rowsByKey: Map<string, MeaningRow>;
  private readonly reasons = new Map<string, string>();
  private readonly presses: Press[] = [];

  constructor(
    readonly meanings: BoardMeanings,
    /** Told what changed. */
    private readonly onChange: (keys: readonly string[], told: string) => void,
  ) {
    this.rowsByKey = new Map(meanings.rows.map((row) => [row.key, row]));
  }

  rows(): readonly MeaningRow[] {
    return [...this.rowsByKey.values()];
  }

  row(key: string): MeaningRow | undefined {
    return this.rowsByKey.get(key);
  }

  saidCount(): number {
    return this.rows().filter(({ said }) => said !== null).length;
  }

  /** What the row would say if it were taken. */
  offer(row: MeaningRow): MeaningChoice | null {
    return row.choices[0] ?? null;
  }

  /** Why something could not be said of a row. */
  reason(key: string): string | null {
    return this.reasons.get(key) ?? null;
  }

  get lastPress(): string | null {
    return this.presses.at(-1)?.what ?? null;
  }

  /** Takes what the rows offer; ends of one range go together. What is not known how to count is left. */
  take(rows: readonly MeaningRow[]): Promise<void> {
    const all = new Map(rows.flatMap((row) => this.withPartners(row)).map((row) => [row.key, row]));
    return this.say(
      [...all.values()].flatMap((row) => {
        const choice = row.said === null ? this.offer(row) : null;
        return choice === null || choice.row === null ? [] : [{ key: row.key, row: choice.row }];
      }),
    );
  }

  /** Other rows that hold parts of the same parameter: one says nothing without them. */
  private withPartners(row: MeaningRow): readonly MeaningRow[] {
    const offer = this.offer(row);
    if (offer === null || offer.part === null) return [row];
    return this.rows().filter((other) => {
      const own = this.offer(other);
      return own !== null && own.means === offer.means && own.part !== null;
    });
  }

  /** Says what these rows mean; nothing else is touched. */
  async say(said: readonly { readonly key: string; readonly row: object }[]): Promise<void> {
    if (said.length === 0) return;
    const before = said.map(({ key }) => ({ key, row: JSON.stringify(this.row(key)?.said?.row ?? {}) }));
    const what = said.length === 1 ? (said[0]?.key ?? '') : `${said.length} settings`;
    const isDone = await this.send(said.map(({ key, row }) => ({ key, row: JSON.stringify(row) })));
    if (!isDone) return;
    this.presses.push({ before, what });
    this.onChange(
      said.map(({ key }) => key),
      `${what} said`,
    );
  }

  async undo(): Promise<void> {
    const press = this.presses.pop();
    if (press === undefined) return;
    await this.send(press.before);
    this.onChange(
      press.before.map(({ key }) => key),
      `${press.what} taken back`,
    );
  }

  private async send(said: readonly SaidOfRow[]): Promise<boolean> {
    const answer = await ask('say', { said });
    if (answer.kind === 'refused') {
      this.onChange([], answer.message);
      return false;
    }
    const left = new Map(answer.left.map(({ key, why }) => [key, why]));
    for (const { key, said: now } of answer.rows) {
      const row = this.rowsByKey.get(key);
      if (row !== undefined) this.rowsByKey.set(key, { ...row, said: now });
      const why = left.get(key);
      if (why === undefined) this.reasons.delete(key);
      else this.reasons.set(key, why);
    }
    return true;
  }
}
