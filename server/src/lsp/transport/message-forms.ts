import { Message, type ResponseMessage } from 'vscode-languageserver-protocol';

/** Whether something that was sent has the form of a message. */
export function isMessage(value: unknown): value is Message {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const message: Message = { jsonrpc: '2.0', ...value };
  if (!Message.isRequest(message) && !Message.isNotification(message)) return Message.isResponse(message);
  return message.method !== '$/cancelRequest' || namesRequest(message.params);
}

/** The library looks for what is to be cancelled without another look. */
function namesRequest(params: unknown): boolean {
  if (typeof params !== 'object' || params === null || !('id' in params)) return false;
  return typeof params.id === 'string' || typeof params.id === 'number';
}

/** An answer that refuses; `id`: null where it is not known what is refused. */
export function refusal(id: string | number | null, code: number, message: string): ResponseMessage {
  return { jsonrpc: '2.0', id, error: { code, message } };
}
