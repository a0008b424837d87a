import { MarkupKind } from './library';
import type { OwnAbilities } from './protocol';

/** What we ask of a client's capabilities. Whatever it does not say, or says in no form of the protocol, it can't do. */
export interface ClientAbilities {
  /** How it can count characters in a line, best first; empty: as the protocol always did. */
  readonly positionEncodings: readonly string[];
  readonly watchesFiles: boolean;
  readonly opensOtherFiles: boolean;
  /** Can be asked to ask for findings again. */
  readonly refreshesFindings: boolean;
  readonly asksForFindings: boolean;
  readonly relatedFindings: boolean;
  readonly versionedEdits: boolean;
  readonly editsWithStops: boolean;
  readonly codeActions: boolean;
  readonly asksBeforeRename: boolean;
  readonly definitionLinks: boolean;
  readonly linkTooltips: boolean;
  readonly symbolTree: boolean;
  /** undefined: it takes any number. */
  readonly mostFolds: number | undefined;
  readonly hoverMarkdown: boolean;
  readonly itemMarkdown: boolean;
  readonly itemSnippets: boolean;
  /** Which of our own messages it takes. */
  readonly own: OwnAbilities;
}

/** Reads a client's capabilities, which may be anything. */
export function clientAbilities(said: unknown): ClientAbilities {
  const at = (path: string) => path.split('.').reduce(member, said);
  const flag = (path: string) => at(path) === true;
  const isThere = (path: string) => typeof at(path) === 'object' && at(path) !== null;
  const takesMarkdown = (path: string) => texts(at(path)).includes(MarkupKind.Markdown);
  const folds = at('textDocument.foldingRange.rangeLimit');
  return {
    positionEncodings: texts(at('general.positionEncodings')),
    watchesFiles: flag('workspace.didChangeWatchedFiles.dynamicRegistration'),
    opensOtherFiles: flag('textDocument.synchronization.dynamicRegistration'),
    refreshesFindings: flag('workspace.diagnostics.refreshSupport'),
    asksForFindings: isThere('textDocument.diagnostic'),
    relatedFindings: flag('textDocument.publishDiagnostics.relatedInformation'),
    versionedEdits: flag('workspace.workspaceEdit.documentChanges'),
    editsWithStops: flag('workspace.workspaceEdit.snippetEditSupport'),
    codeActions: isThere('textDocument.codeAction.codeActionLiteralSupport'),
    asksBeforeRename: flag('textDocument.rename.prepareSupport'),
    definitionLinks: flag('textDocument.definition.linkSupport'),
    linkTooltips: flag('textDocument.documentLink.tooltipSupport'),
    symbolTree: flag('textDocument.documentSymbol.hierarchicalDocumentSymbolSupport'),
    mostFolds: typeof folds === 'number' && folds >= 0 ? folds : undefined,
    hoverMarkdown: takesMarkdown('textDocument.hover.contentFormat'),
    itemMarkdown: takesMarkdown('textDocument.completion.completionItem.documentationFormat'),
    itemSnippets: flag('textDocument.completion.completionItem.snippetSupport'),
    own: {
      checked: flag('experimental.propsoff.checked'),
      files: flag('experimental.propsoff.files'),
      commands: flag('experimental.propsoff.commands'),
    },
  };
}

function member(of: unknown, name: string): unknown {
  return typeof of === 'object' && of !== null ? Reflect.get(of, name) : undefined;
}

function texts(value: unknown): readonly string[] {
  return Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];
}
