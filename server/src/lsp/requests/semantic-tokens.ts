import type { SemanticTokens, SemanticTokensRangeParams } from 'vscode-languageserver';
import type { Range } from '../../features/range';
import { type SemanticToken, semanticTokens, semanticTokenTypes } from '../../features/semantic-tokens';
import { type Encoding, type LineSource, outgoing } from '../convert/encoding';
import type { ScriptContext } from './about-script';

export function tokensOf(context: ScriptContext): SemanticTokens {
  return tokens(context);
}

export function tokensIn(context: ScriptContext, { range }: SemanticTokensRangeParams): SemanticTokens {
  return tokens(context, context.session.range(context.snapshot.script, range));
}

function tokens({ session, snapshot }: ScriptContext, range?: Range): SemanticTokens {
  return { data: encoded(snapshot.script.document, semanticTokens(snapshot, range), session.encoding) };
}

/** Five numbers a token, its place counted from the token before; tokens come sorted and don't overlap. */
function encoded(lines: LineSource, tokens: readonly SemanticToken[], encoding: Encoding): number[] {
  const data: number[] = [];
  let lastLine = 0;
  let lastStart = 0;
  for (const { line, start: from, length, type } of tokens) {
    const text = lines.lineAt(line)?.text ?? '';
    const start = outgoing(text, from, encoding);
    const end = outgoing(text, from + length, encoding);
    const sinceLast = line === lastLine ? start - lastStart : start;
    data.push(line - lastLine, sinceLast, end - start, semanticTokenTypes.indexOf(type), 0);
    lastLine = line;
    lastStart = start;
  }
  return data;
}
