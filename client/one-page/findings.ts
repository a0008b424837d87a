import { diagnosticCount, type Diagnostic as Mark, setDiagnostics } from '@codemirror/lint';
import type { CodeAction, Command, Diagnostic } from 'vscode-languageclient';
import { element } from '../page/element';
import { type Mark as Level, markOf } from '../page/mark';
import { commands } from './host/commands';
import { applyEdit, documentOf, isServed } from './host/documents';
import { codeActionProviders, marksIn, onMarked } from './host/languages';
import { Range } from './host/values';
import type { FileDiagnostics, PageClient } from './page-client';
import { editOf } from './protocol-edit';
import type { OpenText, Texts } from './texts';

/** How heavy a finding is, as the protocol counts. */
const severities = ['error', 'error', 'warning', 'info', 'hint'] as const;
const levels: readonly Level[] = ['must-fix', 'must-fix', 'risk', 'note', 'tidy'];

/** What the server finds in the texts: marked in the editor, listed below it, each with what would mend it. */
export class Findings {
  constructor(
    private readonly client: PageClient,
    private readonly texts: Texts,
    private readonly list: HTMLElement,
    /** Shows a place of the text that is listed. */
    private readonly go: (offset: number) => void,
  ) {
    client.onFound((found) => this.received(found));
    texts.onShown.event(() => this.show());
    onMarked.event(() => this.show());
    client.onStateChanged(() => this.show());
    this.show();
  }

  private received({ uri, diagnostics }: FileDiagnostics): void {
    const text = this.texts.open.get(uri);
    if (text === undefined) return;
    text.found = diagnostics;
    if (text === this.texts.active) this.show();
  }

  private show(): void {
    const { active: text, view } = this.texts;
    if (text === null) {
      this.list.replaceChildren(
        nothing('Nothing is open: New begins a script, Open takes one from this device.'),
      );
      return;
    }
    const all = [...(text.found ?? []), ...marksIn(text.uri).map(asProtocol)];
    const marks = all
      .map((one): Mark => {
        const from = text.offsetOf(one.range.start);
        return {
          from,
          to: Math.max(from, text.offsetOf(one.range.end)),
          severity: severities[one.severity ?? 1] ?? 'error',
          message: wordsOf(one),
          renderMessage: () => this.inWords(text, one),
        };
      })
      .sort((one, other) => one.from - other.from);
    if (marks.length + diagnosticCount(view.state) > 0) view.dispatch(setDiagnostics(view.state, marks));
    this.list.replaceChildren(
      ...(all.length === 0
        ? [nothing(this.whyNone(text))]
        : [...all].sort(heaviestFirst).map((one) => this.row(text, one))),
    );
  }

  /** An empty list says that nothing is wrong only where the text was looked at. */
  private whyNone({ languageId, found }: OpenText): string {
    if (!isServed(languageId))
      return 'This text is not checked: only craft scripts are, whose names end in .craft, and texts of a board.';
    if (this.client.state === 'stopped')
      return 'The checks are not running, so this text is not checked. “Start the Checks Again” is under More.';
    return found === null ? 'This text is being checked.' : 'Nothing is found in this text.';
  }

  private row(text: OpenText, one: Diagnostic): HTMLElement {
    const level = levels[one.severity ?? 1] ?? 'must-fix';
    const line = text.state.doc.lineAt(text.offsetOf(one.range.start)).number;
    return element(
      'li',
      { class: `finding ${level}` },
      markOf(level),
      element(
        'span',
        {},
        element(
          'button',
          { type: 'button', class: 'place', onclick: () => this.go(text.offsetOf(one.range.start)) },
          `Line ${line}`,
        ),
        this.inWords(text, one),
      ),
    );
  }

  /** The finding, and as buttons what would mend it: they come once they are asked for. */
  private inWords(text: OpenText, one: Diagnostic): HTMLElement {
    const fixes = element('span', { class: 'fixes' });
    whenSeen(fixes, async () => {
      const actions = await this.actionsFor(text, one);
      fixes.replaceChildren(
        ...actions.map((action) =>
          element('button', { type: 'button', onclick: () => void this.take(action) }, action.title),
        ),
      );
    });
    return element('span', { class: 'words' }, element('span', {}, wordsOf(one)), fixes);
  }

  private async actionsFor(text: OpenText, one: Diagnostic): Promise<readonly (CodeAction | Command)[]> {
    const context = { diagnostics: [one], only: ['quickfix'], triggerKind: 2 };
    const params = { textDocument: { uri: text.uri }, range: one.range, context };
    const served = await this.client.ask<(CodeAction | Command)[]>('textDocument/codeAction', params);
    const { start, end } = one.range;
    const range = new Range(start.line, start.character, end.line, end.character);
    const own = codeActionProviders.of(text.languageId).flatMap((provider) =>
      provider.provideCodeActions(documentOf(text), range, {
        ...context,
        diagnostics: [{ ...one, range }],
      }),
    );
    return [...(served ?? []), ...(own as CodeAction[])];
  }

  private async take(action: CodeAction | Command): Promise<void> {
    if ('edit' in action && action.edit !== undefined) await applyEdit(editOf(action.edit));
    const command = typeof action.command === 'string' ? (action as Command) : action.command;
    if (command !== undefined) await commands.executeCommand(command.command, ...(command.arguments ?? []));
  }
}

function wordsOf({ message }: Diagnostic): string {
  return typeof message === 'string' ? message : message.value;
}

/** Of a long list only what is looked at is asked about. */
function whenSeen(seen: HTMLElement, run: () => Promise<void>): void {
  const watch = new IntersectionObserver((entries) => {
    if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
    watch.disconnect();
    void run();
  });
  watch.observe(seen);
}

function heaviestFirst(one: Diagnostic, other: Diagnostic): number {
  return (one.severity ?? 1) - (other.severity ?? 1) || one.range.start.line - other.range.start.line;
}

function nothing(why: string): HTMLElement {
  return element('li', { class: 'aside' }, why);
}

/** What our client marks counts severities from 0, the protocol from 1. */
function asProtocol({
  range,
  message,
  severity,
  source = 'propsoff',
  code = '',
}: ReturnType<typeof marksIn>[number]): Diagnostic {
  return { range, message, severity: (severity + 1) as NonNullable<Diagnostic['severity']>, source, code };
}
