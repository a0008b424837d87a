import type { Catalog } from '../../catalog/catalog';
import type { ClientAbilities } from '../client-abilities';

/**
 * Where a client can read the whole story of a check. Ours runs a command that opens it as a page; another one is led
 * to the place on the page that ships beside the server.
 */
export class CheckStories {
  private page: string | null | undefined;

  constructor(
    private readonly client: Pick<ClientAbilities, 'linksOfFindings' | 'own'>,
    /** The ids of the checks that ship. */
    private readonly shipped: ReadonlySet<string>,
    /** The URI of the page that ships; looked up when it is first asked for. */
    private readonly findPage: () => string | null,
  ) {}

  /** A link to the story of a check; null where the client has no use for one, or nothing tells that story. */
  of(id: string, catalog: Pick<Catalog, 'check' | 'replacements'>): string | null {
    if (!this.client.linksOfFindings) return null;
    if (this.client.own.commands) return catalog.check(id) === undefined ? null : commandFor(id);
    // What the workspace says of a check of its own stands on no page.
    const isReplaced = catalog.replacements.some(({ what, name }) => what === 'check' && name === id);
    if (!this.shipped.has(id) || isReplaced) return null;
    this.page ??= this.findPage();
    return this.page === null ? null : `${this.page}#${id}`;
  }
}

/** As the editor reads the link of a command: its arguments are a list in JSON. */
function commandFor(id: string): string {
  return `command:propsoff.explainCheck?${encodeURIComponent(JSON.stringify([id]))}`;
}
