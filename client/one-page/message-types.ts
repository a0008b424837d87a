/**
 * Of the protocol's library our own messages need only that a type of message has a name. The build puts this in the
 * library's place: the whole of it would be a sixth of the page's own script.
 */
export class RequestType {
  constructor(readonly method: string) {}
}

export class NotificationType {
  constructor(readonly method: string) {}
}
