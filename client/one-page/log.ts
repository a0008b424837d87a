import type { ClientLog } from '../src/client';
import { showReadOnly } from './host/panels';

/** So many lines are kept. */
const most = 2000;

/** What nobody needs to see at once. */
export class Log implements ClientLog {
  private readonly lines: string[] = [];

  info(line: string): void {
    this.lines.push(line);
    if (this.lines.length > most) this.lines.shift();
  }

  show(): void {
    showReadOnly('log', 'Log', this.lines.join('\n'), 'plain');
  }
}
