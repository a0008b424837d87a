import { Disposable } from './values';

const handlers = new Map<string, (...given: never[]) => unknown>();

/** Commands of the editor itself that mean nothing here: they tell its menus and its tour what has been done. */
const withoutMeaning = new Set(['setContext']);

export const commands = {
  registerCommand(name: string, handler: (...given: never[]) => unknown): Disposable {
    handlers.set(name, handler);
    return new Disposable(() => handlers.delete(name));
  },

  async executeCommand(name: string, ...given: readonly unknown[]): Promise<unknown> {
    const handler = handlers.get(name);
    if (handler === undefined && !withoutMeaning.has(name)) throw new Error(`there is no command ${name}`);
    return handler?.(...(given as never[]));
  },
};
