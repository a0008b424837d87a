import type { ClientCapabilities } from 'vscode-languageserver';
import type { OwnAbilities } from './protocol';

/** Which of our own messages a client takes: none, unless it says so. */
export function ownAbilities({ experimental }: ClientCapabilities): OwnAbilities {
  const said: unknown = hasMember(experimental, 'propsoff') ? experimental.propsoff : null;
  return {
    checked: hasMember(said, 'checked') && said.checked === true,
    files: hasMember(said, 'files') && said.files === true,
    commands: hasMember(said, 'commands') && said.commands === true,
  };
}

function hasMember<N extends string>(value: unknown, name: N): value is Readonly<Record<N, unknown>> {
  return typeof value === 'object' && value !== null && name in value;
}
