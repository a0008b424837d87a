import type { OwnAbilities } from './files-protocol';
import { DiagnosticTag, MarkupKind } from './library';

/** What we ask of a client's capabilities. Whatever it does not say, or says in no form of the protocol, it can't do. */
export interface ClientAbilities {
  /** How it can count characters in a line, best first; empty: as the protocol always did. */
  readonly positionEncodings: readonly string[];
  readonly watchesFiles: boolean;
  /** Shows how far it is with what takes long. */
  readonly showsProgress: boolean;
  readonly opensOtherFiles: boolean;
  /** Can be asked to ask for findings again. */
  readonly refreshesFindings: boolean;
  readonly asksForFindings: boolean;
  readonly relatedFindings: boolean;
  /** Shows beside a finding where its check is explained. */
  readonly linksOfFindings: boolean;
  /** Greys what does nothing. */
  readonly greysFindings: boolean;
  readonly versionedEdits: boolean;
  readonly editsWithStops: boolean;
  /** Can make a file as part of an edit. */
  readonly createsFiles: boolean;
  /** Can rename a file as part of an edit. */
  readonly renamesFiles: boolean;
  readonly codeActions: boolean;
  /** Asks for the edits of an action when it is picked. */
  readonly resolvesActions: boolean;
  readonly asksBeforeRename: boolean;
  readonly definitionLinks: boolean;
  readonly linkTooltips: boolean;
  readonly symbolTree: boolean;
  /** undefined: it takes any number. */
  readonly mostFolds: number | undefined;
  readonly hoverMarkdown: boolean;
  readonly itemMarkdown: boolean;
  readonly itemSnippets: boolean;
  /** Shows a few words beside an item's label for all items, and not only for the one that is picked. */
  readonly itemLabelDetails: boolean;
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
    showsProgress: flag('window.workDoneProgress'),
    opensOtherFiles: flag('textDocument.synchronization.dynamicRegistration'),
    refreshesFindings: flag('workspace.diagnostics.refreshSupport'),
    asksForFindings: isThere('textDocument.diagnostic'),
    relatedFindings: flag('textDocument.publishDiagnostics.relatedInformation'),
    linksOfFindings: flag('textDocument.publishDiagnostics.codeDescriptionSupport'),
    greysFindings: list(at('textDocument.publishDiagnostics.tagSupport.valueSet')).includes(
      DiagnosticTag.Unnecessary,
    ),
    versionedEdits: flag('workspace.workspaceEdit.documentChanges'),
    editsWithStops: flag('workspace.workspaceEdit.snippetEditSupport'),
    createsFiles: texts(at('workspace.workspaceEdit.resourceOperations')).includes('create'),
    renamesFiles: texts(at('workspace.workspaceEdit.resourceOperations')).includes('rename'),
    codeActions: isThere('textDocument.codeAction.codeActionLiteralSupport'),
    resolvesActions:
      flag('textDocument.codeAction.dataSupport') &&
      texts(at('textDocument.codeAction.resolveSupport.properties')).includes('edit'),
    asksBeforeRename: flag('textDocument.rename.prepareSupport'),
    definitionLinks: flag('textDocument.definition.linkSupport'),
    linkTooltips: flag('textDocument.documentLink.tooltipSupport'),
    symbolTree: flag('textDocument.documentSymbol.hierarchicalDocumentSymbolSupport'),
    mostFolds: typeof folds === 'number' && folds >= 0 ? folds : undefined,
    hoverMarkdown: takesMarkdown('textDocument.hover.contentFormat'),
    itemMarkdown: takesMarkdown('textDocument.completion.completionItem.documentationFormat'),
    itemSnippets: flag('textDocument.completion.completionItem.snippetSupport'),
    itemLabelDetails: flag('textDocument.completion.completionItem.labelDetailsSupport'),
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

function list(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

function texts(value: unknown): readonly string[] {
  return list(value).filter((one) => typeof one === 'string');
}
