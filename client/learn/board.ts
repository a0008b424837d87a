import type {
  BoardMeanings,
  MeaningChoice,
  MeaningRow,
  PortRoles,
  RowMeant,
  SaidOfRow,
} from '../../server/src/lsp/learn-protocol';
import { ask } from './extension-side';

/** What is said of a setting. */
export interface SaidOfSetting {
  readonly key: string;
  readonly row: RowMeant;
}

/** What a press changed, to be taken back. */
interface Press {
  readonly before: readonly SaidOfRow[];
  /** Null: it said nothing of ports. */
  readonly portRoles: PortRoles | null;
  readonly what: string;
}

/** What the page knows of the board: its settings, what was said, and what each row would say if it were taken. */
export class Board {
  private readonly rowsByKey: Map<string, MeaningRow>;
  private readonly reasons = new Map<string, string>();
  private readonly presses: Press[] = [];
  /** Parts that say nothing alone, by their keys: they are said together with the next of their parameter. */
  private readonly waiting = new Map<string, RowMeant>();
  private roles: PortRoles;

  constructor(
    readonly meanings: BoardMeanings,
    /** Told what changed. */
    private readonly onChange: (keys: readonly string[], told: string) => void,
  ) {
    this.rowsByKey = new Map(meanings.rows.map((row) => [row.key, row]));
    this.roles = meanings.portRoles;
  }

  /** What the board's words for the roles of its ports are said to mean. */
  get portRoles(): PortRoles {
    return this.roles;
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

  /** What the row would say if it were taken; nothing while it may say what a port is for. */
  offer(row: MeaningRow): MeaningChoice | null {
    return row.port === null ? (row.choices[0] ?? null) : null;
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

  /** Says what these rows mean, and what words for roles of ports do; nothing else is touched. */
  async say(said: readonly SaidOfSetting[], portRoles: PortRoles | null = null): Promise<void> {
    const all = this.withWaiting(said);
    if (all.length === 0) return;
    const before = all.map(({ key }) => ({ key, row: JSON.stringify(this.row(key)?.said?.row ?? {}) }));
    const what = all.length === 1 ? (all[0]?.key ?? '') : `${all.length} settings`;
    const rolesBefore = portRoles === null ? null : this.roles;
    const isDone = await this.send(
      all.map(({ key, row }) => ({ key, row: JSON.stringify(row) })),
      portRoles,
    );
    if (!isDone) return;
    for (const { key, row } of all) {
      if (this.reasons.has(key) && row.as !== undefined) this.waiting.set(key, row);
      else this.waiting.delete(key);
    }
    this.presses.push({ before, what, portRoles: rolesBefore });
    this.onChange(
      all.map(({ key }) => key),
      all.every(({ key }) => this.waiting.has(key)) ? `${what} waits for the other part` : `${what} said`,
    );
  }

  /** Whether a row waits for another part of its parameter to be said. */
  waits(key: string): boolean {
    return this.waiting.has(key);
  }

  private withWaiting(said: readonly SaidOfSetting[]): readonly SaidOfSetting[] {
    const means = new Set(said.flatMap(({ row }) => (row.as === undefined ? [] : (row.means ?? []))));
    const keys = new Set(said.map(({ key }) => key));
    const waiting = [...this.waiting].flatMap(([key, row]) =>
      keys.has(key) || !means.has(row.means ?? '') ? [] : [{ key, row }],
    );
    return [...said, ...waiting];
  }

  async undo(): Promise<void> {
    const press = this.presses.pop();
    if (press === undefined) return;
    for (const { key } of press.before) this.waiting.delete(key);
    await this.send(press.before, press.portRoles);
    this.onChange(
      press.before.map(({ key }) => key),
      `${press.what} taken back`,
    );
  }

  private async send(said: readonly SaidOfRow[], portRoles: PortRoles | null): Promise<boolean> {
    const answer = await ask('say', {
      said,
      portRoles: portRoles === null ? null : JSON.stringify(portRoles),
    });
    if (answer.kind === 'refused') {
      this.onChange([], answer.message);
      return false;
    }
    if (portRoles !== null && answer.left.length === 0) this.roles = portRoles;
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
